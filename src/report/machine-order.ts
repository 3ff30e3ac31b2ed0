/** The order note for a machine shop: the adapter, what is critical and why. Plain ASCII. It names nobody: who orders adds that. */
import { characteristicsOf, thicknessLimits } from '../inspect/characteristics.ts';
import type { Joint } from '../job/joint.ts';
import { holeSets } from '../shop/hole-table.ts';
import { formatMass } from '../units/format.ts';
import { note } from './note-lines.ts';
import { limitsText, sizeText } from './numbers.ts';

export interface MachineOrder {
  readonly title: string;
  readonly revision: string;
  /** Words that stand first when checks fail; else empty. */
  readonly warning: string;
  readonly files: readonly { readonly name: string; readonly about: string }[];
}

/** What must be right, and why: few things, each with its reason. */
export function criticalOf(joint: Joint): string[] {
  const { job, adapterSpec, turnOver } = joint;
  const { units } = job;
  const { registers, thickness, wheelSeat, groups } = adapterSpec;
  const { lower: thinnest, upper: thickest, raised } = thicknessLimits(joint);
  const apart = raised ? limitsText(thinnest, thickest, units) : sizeText(thickness, units);
  const sides = (['driving', 'driven'] as const).flatMap((side) => {
    const register = registers[side];
    if (!register) return [];
    const { lower, upper, zone } = register.limits;
    const kind = register.gender === 'male' ? 'spigot' : 'recess';
    return [
      `${side} register, ${kind}: ${limitsText(lower, upper, units)} (${zone}). It alone centres the ${side} flange; the screws do not.`,
    ];
  });
  const both = registers.driving !== null && registers.driven !== null;
  const runout = characteristicsOf(joint).find(({ id }) => id === 'wheel-seat-runout');
  const seat = wheelSeat
    ? [
        `Seat of the wheel: ${limitsText(wheelSeat.limits.lower, wheelSeat.limits.upper, units)} (${wheelSeat.limits.zone}), true to the registers${runout ? `, no more than ${sizeText(runout.upper, units, 3)} total indicator reading` : ''}: a sensor reads the wheel's run-out.`,
      ]
    : [];
  const tapped = groups.flatMap(({ shape, label }) =>
    shape.kind === 'tapped'
      ? [
          `${label}: full thread ${shape.drillDepth === null ? 'right through' : `${sizeText(shape.threadDepth, units)} deep`}. The screws are tightened for all of it.`,
        ]
      : [],
  );
  const dowels = (['driving', 'driven'] as const).flatMap((side) => {
    const set = joint.dowels?.[side];
    if (!set) return [];
    const { lower, upper, zone } = set.fits.adapter.limits;
    return set.reamed === 'together'
      ? [
          `${side} dowel holes: drilled under size only. They are reamed later, together with their flange: do not ream them.`,
        ]
      : [
          `${side} dowel holes: ${limitsText(lower, upper, units)} (${zone}), reamed. The pins hold the flange in its place.`,
        ];
  });
  return [
    ...sides,
    ...(both
      ? [
          `Run-out between the two registers: no more than ${sizeText(turnOver.tir, units, 3)}, total indicator reading (${turnOver.from}). It shakes the shaft at every turn: one set-up, or turned over and indicated.`,
        ]
      : []),
    `Both faces flat and parallel, ${apart} apart, no burr at any hole: the torque goes through the clamped faces.`,
    'The turn of one hole pattern against the other, and which way round: seen from each side as drawn. A mirrored part is scrap.',
    ...tapped,
    ...dowels,
    ...seat,
  ];
}

/** The note as text. */
export function machineOrderText(joint: Joint, { title, revision, warning, files }: MachineOrder): string {
  const { job, adapterSpec, adapterMaterial, adapterMass } = joint;
  const { units } = job;
  const out = note();
  if (warning !== '') {
    out.text(warning);
    out.gap();
  }
  out.text(`Machining order: adapter ${adapterSpec.name}`);
  out.text(`${title}, revision ${revision}`);
  out.gap();
  out.row('Quantity', String(job.sheet.quantity));
  out.row('Material', `${adapterMaterial.name}, with its certificate where you have one`);
  out.row(
    'Size',
    `${sizeText(adapterSpec.outside, units)} diameter, ${sizeText(adapterSpec.thickness, units)} between the faces`,
  );
  out.row('Mass', `${formatMass(adapterMass.mass, units)} each, as drawn`);
  out.row('Units', 'millimetres in the STEP file. The drawing says its own.');
  out.row(
    'In doubt',
    'the drawing counts for limits and threads, the solid for shape. Where they differ, ask before you cut.',
  );
  out.section(
    'Files',
    files.map(({ name, about }) => `${name}: ${about}.`),
  );
  out.section('What must be right, and why', criticalOf(joint));
  out.section(
    'Holes',
    holeSets(joint).map(
      ({ letter, holes, what, from }) => `${letter}: ${holes.length}, ${what}, worked from the ${from} side.`,
    ),
  );
  out.section('Finish', [
    'Registers and faces as turned, Ra 1.6 um or better; the rest Ra 3.2 (common practice). No polish on a register.',
    'Break all edges 0.3 to 0.5 mm but for the foot of a spigot; no burr may stand on a face.',
    'No plating, paint or blacking on registers and faces; oil against rust. Threads clean and dry of chips.',
    `Mark revision ${revision} and the index mark on the rim.`,
  ]);
  out.section('With the part', [
    'The measured registers, both diameters, and the run-out between them, on the inspection record or on any paper.',
    'General tolerance where none is stated: ISO 2768-m.',
  ]);
  return out.end();
}
