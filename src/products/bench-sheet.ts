/** The bench sheet: one page of A4 to take to the lathe and to the machine. It tells what report and inspection record know, nothing of its own. */

import { phaseWords } from '../drawing/phase-view.ts';
import { holeSize, ringOf } from '../drawing/shop/bolt-circles.ts';
import { angleText, diameter, limitTexts, sizeText, toleranceText } from '../drawing/shop/size-text.ts';
import { characteristicsOf } from '../inspect/characteristics.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { wordsOf } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { type BenchSheet, benchSheetHtml, type HoldLine, type ScrewLine } from '../report/bench-sheet.ts';
import { crossOrder } from '../report/cross-order.ts';
import { limitText, quantityText } from '../report/numbers.ts';
import { marginText, reportData } from '../report/report-data.ts';
import { safetyNote } from '../report/safety.ts';
import { screwName, torqueText } from '../report/screw-list.ts';
import { type HoleSet, holeSets } from '../shop/hole-table.ts';
import { indicated } from '../shop/route.ts';
import { machiningRule } from '../standards/machining-practice.ts';
import { must } from '../standards/table.ts';
import { formatTorque } from '../units/format.ts';
import { writeSvg } from '../write/svg.ts';
import { readingsOf } from './bench-readings.ts';
import { phaseToDraw } from './phase-to-draw.ts';
import { type Making, type Product, utf8, verdictWords } from './product.ts';

const kind = 'bench-sheet';

/** Run-outs of the inspection record: they stand with what is dialled in. */
const byDial: readonly string[] = ['register-runout', 'wheel-seat-runout', 'face-parallel'];

/** "A: 6 x Ø9 on Ø84, one on the index mark". */
function circleWords(set: HoleSet, joint: Joint): string {
  const { units } = joint.job;
  const shape = joint.adapterSpec.groups.find(({ id }) => id === set.group)?.shape;
  const limits = shape?.kind === 'dowel' ? shape.limits : null;
  // What is reamed together with its flange is only drilled before.
  const later =
    set.side !== 'wheel' && limits && joint.dowels?.[set.side]?.reamed === 'together' ? ', reamed with the flange' : '';
  const what = `${set.letter}: ${set.holes.length} x ${holeSize({ cuts: set.cuts, limits }, units)}${later}`;
  // The index mark stands at the right seen from the driven side, at the left from the other.
  const ring = set.from === 'driven' ? ringOf(set.holes, 0) : ringOf(set.holes, 180, -1);
  if (!ring) return `${what}, by X and Y (drawing)`;
  const at = ring.first === 0 ? 'one on the index mark' : `one at ${angleText(ring.first)}`;
  return `${what} on ${diameter(2 * ring.radius, units)}, ${at}`;
}

/** Every size with its limits, and each set of holes with its circle. */
function holdLines(joint: Joint): { hold: HoldLine[]; dial: HoldLine[] } {
  const { units } = joint.job;
  const sets = holeSets(joint);
  const within = (mm: number) => `each within ${toleranceText(mm, units)}`;
  const said = new Set<string>();
  const rows = characteristicsOf(joint).map((row) => {
    const [high, low] =
      row.unit === 'mm'
        ? limitTexts(row.lower, row.upper, units)
        : [`${row.upper.toFixed(0)} g`, `${row.lower.toFixed(0)}`];
    const set = row.id.endsWith('-holes')
      ? sets.find(({ group }) => group === row.feature && !said.has(group))
      : undefined;
    if (set) said.add(set.group);
    const line: HoldLine = {
      number: row.number,
      what: set ? circleWords(set, joint) : row.what,
      limits: set
        ? within(row.upper)
        : row.lower === 0
          ? `at most ${toleranceText(row.upper, units)}`
          : `${low} to ${high}`,
      found: row.found === null ? '' : row.unit === 'g' ? row.found.value.toFixed(0) : sizeText(row.found.value, units),
    };
    return { id: row.id, line };
  });
  const stray = must(machiningRule('hole_position', 0)).value;
  const further = sets
    .filter(({ group }) => !said.has(group))
    .map(
      (set): HoldLine => ({
        number: null,
        what: circleWords(set, joint),
        limits: within(stray),
        found: '',
      }),
    );
  return {
    hold: [...rows.filter(({ id }) => !byDial.includes(id)).map(({ line }) => line), ...further],
    dial: rows.filter(({ id }) => byDial.includes(id)).map(({ line }) => line),
  };
}

/** What a dial must show: at the machine, and once all is bolted up. */
function dialLines(joint: Joint, own: readonly HoldLine[], findings: readonly Finding[]): HoldLine[] {
  const { units, adapter, wheel } = joint.job;
  const line = (what: string, tir: number): HoldLine => ({
    number: null,
    what,
    limits: toleranceText(tir, units),
    found: '',
  });
  const limitOf = (code: string) => findings.find((one) => one.code === code && one.unit === 'mm')?.limit ?? null;
  const [offCentre, face, teeth] = ['concentricity', 'face-runout', 'wheel-runout'].map(limitOf);
  const words = wordsOf(wheel);
  return [
    ...(adapter.setup === 'one chucking' ? [] : [line(`turned over: ${indicated(joint)}`, joint.turnOver.tir)]),
    ...own.map((one) => ({ ...one, limits: one.limits.replace(/^at most /, '') })),
    ...(wheel?.set_true === undefined ? [] : [line(`the wheel set true: its ${words.teeth}`, wheel.set_true)]),
    // An axis that is off by e shows 2 e on the dial.
    ...(typeof offCentre === 'number' ? [line('bolted up: rim of the driven flange', 2 * offCentre)] : []),
    ...(typeof face === 'number' ? [line('bolted up: face of the driven flange, at its rim', face)] : []),
    ...(typeof teeth === 'number' && wheel?.set_true === undefined
      ? [line(`bolted up: ${words.teeth} of the wheel`, teeth)]
      : []),
  ];
}

/** Steps in which a screw is brought to its torque: thirds. Common practice. */
const thirds = [1 / 3, 2 / 3, 1] as const;

/** Thirds of a torque in one unit: "27, 53, 80". */
const stepsIn = (torque: number, shown: (share: number) => string) =>
  thirds.map((share) => shown(torque * share)).join(', ');

function stepsText(torque: number, units: Joint['job']['units']): string {
  const metric = `${stepsIn(torque, torqueText)} N.m`;
  if (units === 'mm') return metric;
  return `${metric} (${stepsIn(torque, (share) => formatTorque(share, 'in').replace(' lbf.ft', ''))} lbf.ft)`;
}

function screwLine(group: ScrewGroup, sets: readonly HoleSet[], units: Joint['job']['units']): ScrewLine {
  const { count, label, tightening, id } = group;
  const { torque, friction, note } = tightening;
  const letter = sets.find((set) => set.group === id)?.letter ?? '';
  const order = crossOrder(count).map((place) => `${letter}${place}`);
  return {
    what: `${count} x ${screwName(group)}, class ${group.class}`,
    where: torque === null ? label : `${label}; friction ${friction}`,
    torque: torque === null ? note : `${torqueText(torque)} N.m (${formatTorque(torque, 'in')})`,
    steps: torque === null ? '' : stepsText(torque, units),
    order: order.join(' '),
  };
}

function sensorLines(joint: Joint, findings: readonly Finding[], data: ReturnType<typeof reportData>) {
  const { wheelSpec, job } = joint;
  if (!wheelSpec) return [];
  const { units, sensor } = job;
  const line = (what: string, value: string, toFill = false) => ({ what, value, toFill });
  const size = (mm: number) => quantityText(mm, 'mm', units);
  const needs = sensor ? sensorNeeds(sensor) : null;
  const [least, most] = [needs?.of('gapLeast'), needs?.of('gapMost')];
  const range = [least ? `least ${size(least.value)}` : '', most ? `most ${size(most.value)}` : ''].filter(
    (one) => one !== '',
  );
  const usual = [least, most].filter((one) => one && !one.isOwn);
  const doubt =
    usual.length === 0 ? '' : ` (usual of its kind${usual.some((one) => one?.memory) ? ', from memory' : ''})`;
  const numberOf = (code: string) => findings.find((one) => one.code === code)?.value ?? null;
  const [high, low] = [numberOf('sensor-gap-high'), numberOf('sensor-gap-low')];
  const told = (data.controller?.lines ?? []).filter(({ label }) =>
    ['Pulses in a turn of this shaft', 'When nothing is changed', 'Number to enter', 'Correction'].includes(label),
  );
  return [
    line(wordsOf(job.wheel).teeth, String(wheelSpec.teeth - wheelSpec.missing)),
    ...(needs?.gap
      ? [line('gap, feeler gauge', `${[`set ${size(needs.gap.value)}`, ...range].join('; ')}${doubt}`, true)]
      : []),
    ...(high !== null && low !== null ? [line('gap as it turns', `${size(high)} to ${size(low)}`)] : []),
    ...told.map(({ label, value }) => line(label.toLowerCase(), value)),
  ];
}

/** What the sheet says of a joint. */
export function benchSheet({
  joint,
  findings,
  verdict,
  revision,
  forced,
}: Omit<Making, 'base' | 'pictures'>): BenchSheet {
  const { title, units } = joint.job;
  const data = reportData(joint, findings, null, revision);
  const { hold, dial } = holdLines(joint);
  const sets = holeSets(joint);
  const phase = phaseToDraw(joint);
  const weakest = data.answers.find(({ question }) => question === 'What is the weakest link?');
  return {
    title,
    revision,
    warning: verdictWords(verdict, forced),
    units,
    verdict,
    headline: data.headline,
    weakest: weakest?.word.includes('%') ? weakest.word : '',
    measured: readingsOf(joint),
    hold,
    dial: dialLines(joint, dial, findings),
    screws: joint.screws.map((group) => screwLine(group, sets, units)),
    sensor: sensorLines(joint, findings, data),
    cautions: data.findings
      .filter((one) => one.verdict === 'fail' || one.verdict === 'caution')
      .map((one) => ({
        verdict: one.verdict,
        text:
          one.value === null || one.limit === null
            ? one.title
            : `${one.title}: ${quantityText(one.value, one.unit, units)}, ${limitText(one, units)}, ${marginText(one, units)}`,
      })),
    boltUp: phase ? phaseWords(phase).slice(0, 1) : [],
    safety: [safetyNote[0] ?? '', safetyNote[4] ?? ''],
  };
}

export const benchSheetFile: Product = {
  kind,
  about:
    'bench sheet: one page of A4 with verdict, readings, sizes to hold, dial-in limits, torques and the sensor, with room to write',
  metal: false,
  applies: () => true,
  names: ({ base }) => [`${base}-bench-sheet.html`],
  async make(making) {
    const section = making.pictures().find(({ name }) => name === 'section');
    const picture = section ? writeSvg(section.drawing, { standalone: false }) : '';
    const page = benchSheetHtml(benchSheet(making), picture);
    return [{ kind, name: `${making.base}-bench-sheet.html`, bytes: utf8(page) }];
  },
};
