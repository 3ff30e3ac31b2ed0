/** The DXF flavours: one list, from which the file names, the help and the writers come. */
import type { SheetPart } from '../model/sheet.ts';
import { POLYLINE_CHORD_ERROR } from './dxf-cuts.ts';

export type DxfFlavourId = 'standard' | 'r12' | 'polyline';

export interface DxfFlavour {
  readonly id: DxfFlavourId;
  /** End of the file's name: the flavour is in it, so that nobody cuts from the wrong one unawares. */
  readonly suffix: string;
  /** One line for help and report. */
  readonly about: string;
  /** Each writer's package is loaded when it is first used. */
  readonly write: (part: SheetPart) => Promise<string>;
}

/** Every flavour, the usual one first. */
export const DXF_FLAVOURS: readonly DxfFlavour[] = [
  {
    id: 'standard',
    suffix: '.dxf',
    about: 'true arcs in closed polylines, circles as circles, millimetres declared',
    write: async (part) => (await import('./dxf-standard.ts')).writeDxfStandard(part),
  },
  {
    id: 'r12',
    suffix: '.r12.dxf',
    about: 'true arcs for old controllers (release 12)',
    write: async (part) => (await import('./dxf-r12.ts')).writeDxfR12(part),
  },
  {
    id: 'polyline',
    suffix: '.polyline.dxf',
    about: `short lines for machines that read no arcs, within ${POLYLINE_CHORD_ERROR} mm of the curve`,
    write: async (part) => (await import('./dxf-polyline.ts')).writeDxfPolyline(part),
  },
];

/** The flavour with this id. @throws on an unknown id, naming the known ones */
export function dxfFlavour(id: string): DxfFlavour {
  const found = DXF_FLAVOURS.find((flavour) => flavour.id === id);
  if (found === undefined) {
    throw new Error(`Unknown DXF flavour "${id}": known are ${DXF_FLAVOURS.map((flavour) => flavour.id).join(', ')}.`);
  }
  return found;
}
