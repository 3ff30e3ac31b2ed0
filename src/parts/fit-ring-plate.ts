/** Laying equal round gauges side by side on print beds. Lengths in mm. */

/** Bed taken where the job states none: most filament printers have it (common practice). */
export const usualBed: readonly [number, number] = [200, 200];

/** Kept free between gauges, and round the edge of the bed. */
const gap = 4;

export interface PlatePlace {
  readonly x: number;
  readonly y: number;
}

/**
 * Places for `count` gauges of one diameter, in rows, as few plates as they need; each plate is centred on its bed's middle.
 * A gauge wider than the bed still gets a plate of its own: whether it fits is a check's business.
 */
export function platePlaces(count: number, diameter: number, bed: readonly [number, number]): PlatePlace[][] {
  const pitch = diameter + gap;
  const holds = (side: number) => Math.max(1, Math.floor((side - gap) / pitch + 1e-9));
  const perPlate = holds(bed[0]) * holds(bed[1]);
  return Array.from({ length: Math.ceil(count / perPlate) }, (_, plate) => {
    const here = Math.min(perPlate, count - plate * perPlate);
    // As square as the bed allows: a compact plate prints with less travel.
    const columns = Math.min(holds(bed[0]), Math.max(Math.ceil(Math.sqrt(here)), Math.ceil(here / holds(bed[1]))));
    const rows = Math.ceil(here / columns);
    return Array.from({ length: here }, (_, i) => ({
      x: ((i % columns) - (columns - 1) / 2) * pitch,
      y: ((rows - 1) / 2 - Math.floor(i / columns)) * pitch,
    }));
  });
}
