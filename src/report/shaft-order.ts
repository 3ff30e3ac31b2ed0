/** The order sheet for the shop that makes or shortens the shaft: lengths by every way of saying them, faces named, what to hold. */
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import { torqueOf } from '../rotor/joint-torque.ts';
import { studyFit } from '../rotor/shaft-fit.ts';
import type { JointWithShaft } from '../rotor/shaft-line.ts';
import type { LengthUnits } from '../units/format.ts';
import { escaped } from '../units/markup.ts';
import { sizeText } from './numbers.ts';
import { reportStyle } from './report-style.ts';

/** One line of a list: what, how much, and what it means. */
export interface OrderRow {
  readonly what: string;
  readonly value: string;
  readonly note: string;
}

export interface ShaftOrder {
  readonly lengths: readonly OrderRow[];
  readonly ends: readonly OrderRow[];
  readonly toHold: readonly OrderRow[];
  /** How it was measured, sentences. */
  readonly measured: readonly string[];
}

type JointToOrder = JointWithShaft &
  Pick<Joint, 'driving' | 'driven'> & { readonly job: Pick<Joint['job'], 'shaft' | 'duty' | 'title'> };

function flangeWords(joint: JointToOrder, units: LengthUnits): string {
  const side = joint.job.shaft?.bolts_to ?? 'driven';
  const { name, outside, holes, register } = joint[side];
  const circle = holes.circle === null ? '' : ` on ${sizeText(holes.circle, units)}`;
  const shape = register
    ? `, register ${register.gender === 'male' ? 'spigot' : 'recess'} ${sizeText(register.diameter.value, units)}`
    : ', no register';
  return `${name}: outside ${sizeText(outside.value, units)}, ${holesThere(holes).length} holes ${sizeText(holes.diameter.value, units)}${circle}${shape}`;
}

/** How finely shops weld and balance, mm and degrees. Service practice of a joint maker and a run-out article; common practice. */
function toHold(joint: JointToOrder): OrderRow[] {
  const { job } = joint;
  const speed = job.duty?.speed;
  const torque = torqueOf(joint);
  return [
    { what: 'Length', value: '±1 mm', note: 'A to B, pushed home where it slips (common practice)' },
    {
      what: 'Forks in line',
      value: 'within 1 degree',
      note: 'scribe a line along the tube before it is cut (common practice)',
    },
    {
      what: 'Run-out of the tube',
      value: '0.5 mm at most',
      note: 'total, anywhere; 0.25 mm near the welds (shop practice, partly from memory)',
    },
    { what: 'Spline halves', value: 'arrows in line', note: 'they are matched and balanced together' },
    {
      what: 'Balance after welding',
      value: speed === undefined ? 'at its highest speed' : `${job.duty?.grade} at ${speed.toFixed(0)} rpm`,
      note: 'ISO 21940-11, both ends; mark how the halves stood',
    },
    {
      what: 'Torque',
      value: torque ? `${torque.value.toFixed(0)} N.m` : '________',
      note: `peak at this shaft${torque && torque.shock !== 1 ? ', shock counted' : ''}; choose joints and weld for it`,
    },
  ];
}

/** What to write on the sheet; null where the length is not known. */
export function shaftOrder(joint: JointToOrder, units: LengthUnits): ShaftOrder | null {
  const fit = studyFit(joint);
  const { shaft } = joint.job;
  if (!fit?.ok || !shaft) return null;
  const { faces, ends, ordered, doubt, toCut, travel, because } = fit;
  const size = (mm: number) => sizeText(mm, units, 1);
  const row = (what: string, length: number, note: string): OrderRow[] => [
    { what: `${what}, face A to face B`, value: size(length), note },
    ...(ends === null ? [] : [{ what: `${what}, joint centre to joint centre`, value: size(length - ends), note: '' }]),
  ];
  const reading = shaft.measured?.value ?? [];
  return {
    lengths: [
      ...(ordered ? row('Pushed home', ordered.compressed, 'the length to make') : []),
      ...row(
        'As fitted at ride height',
        faces,
        ordered ? `slip drawn out by ${size(ordered.out.ride)}` : 'the length to make',
      ),
      ...(ordered ? row('Pulled out', ordered.extended, 'where the slip ends') : []),
      ...(travel
        ? [
            {
              what: 'Works between, face A to face B',
              value: `${size(travel.shortest)} and ${size(travel.longest)}`,
              note: 'through the travel of the axle',
            },
          ]
        : []),
      { what: 'Doubt of these lengths', value: `±${size(doubt)}`, note: 'readings and adapter together' },
      ...(toCut
        ? [
            {
              what: toCut.out >= 0 ? 'Take out of the tube' : 'Put into the tube',
              value: size(Math.abs(toCut.out)),
              note: toCut.tubeLeft === null ? 'of the shaft at hand' : `leaves ${size(toCut.tubeLeft)} weld to weld`,
            },
          ]
        : []),
    ],
    ends: [
      {
        what: 'Face A, on the adapter',
        value: flangeWords(joint, units),
        note: shaft.ends ? `${size(shaft.ends.adapter)} to the joint centre` : '',
      },
      {
        what: 'Face B, at the far end',
        value: '________',
        note: shaft.ends ? `${size(shaft.ends.far)} to the joint centre` : '',
      },
      {
        what: 'Tube',
        value: shaft.tube
          ? `${sizeText(shaft.tube.outside, units)} x ${sizeText(shaft.tube.wall, units)}, ${shaft.tube.material}`
          : '________',
        note: '',
      },
      {
        what: 'Slip',
        value: shaft.slip ? `stroke ${size(shaft.slip.stroke)}` : 'none',
        note: shaft.slip?.engaged === undefined ? '' : `${size(shaft.slip.engaged)} engaged when pushed home`,
      },
      { what: 'Joints and spline, size', value: '________', note: '' },
    ],
    toHold: toHold(joint),
    measured: [
      `Read ${reading.map(size).join(', ')} from the ${shaft.measured?.from === 'flange' ? 'bare flange' : 'free face of the mock-up'} to the far flange, middle to middle, at ride height with the wheels loaded.`,
      because,
    ],
  };
}

const table = (title: string, rows: readonly OrderRow[]): string =>
  `<section><h2>${escaped(title)}</h2><table><colgroup><col style="width:34%"><col style="width:34%"><col style="width:32%"></colgroup><tbody>\n${rows
    .map(
      ({ what, value, note }) =>
        `<tr><th scope="row">${escaped(what)}</th><td><strong>${escaped(value)}</strong></td><td>${escaped(note)}</td></tr>`,
    )
    .join('\n')}\n</tbody></table></section>`;

/** The sheet as a page to print. `svg`: the sketch. `warning`: said on top when checks fail; may be empty. */
export function shaftOrderHtml(order: ShaftOrder, title: string, svg: string, warning: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}: order sheet for the shaft</title>
<style>
${reportStyle}
figure svg{max-height:90mm}
.sign{display:flex;gap:8mm;margin-top:8mm}.sign p{flex:1;border-top:.3mm solid var(--ink);padding-top:1mm;font-size:9pt}
</style>
</head>
<body>
<header><p class="kind">Order sheet for the propeller shaft by flangewright. Lengths along the shaft, laid straight.</p><h1>${escaped(title)}</h1></header>
<main>
${warning === '' ? '' : `<p><strong>${escaped(warning)}.</strong> Read the report before you order.</p>`}
<figure>${svg}<figcaption>A is the face that bolts to the adapter, B the face at the far end. Spigots do not count: lengths run between the faces that touch.</figcaption></figure>
${table('Lengths', order.lengths)}
${table('Ends, tube and slip', order.ends)}
${table('To hold', order.toHold)}
<section><h2>How it was measured</h2>${order.measured.map((text) => `<p>${escaped(text)}</p>`).join('')}</section>
<div class="sign"><p>Ordered by, date</p><p>Made by, date</p><p>Length as made, A to B pushed home</p></div>
</main>
</body>
</html>
`;
}
