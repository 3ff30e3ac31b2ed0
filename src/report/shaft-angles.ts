/** The angle sheet: how the shafts lie, what each joint does at each speed, what to shim. For whoever lies under the vehicle. */
import { type AngleStudy, evenAngle, studyAngles } from '../rotor/shaft-angles.ts';
import type { JointWithShaft } from '../rotor/shaft-line.ts';
import { type ShimStudy, studyShims } from '../rotor/shaft-shims.ts';
import { type SpeedRow, speedRows } from '../rotor/shaft-speeds.ts';
import { shimWords } from '../rotor/shaft-words.ts';
import { escaped } from '../units/markup.ts';
import { reportStyle } from './report-style.ts';

export interface AngleSheet {
  readonly study: AngleStudy;
  readonly shims: ShimStudy | null;
  /** What to shim, sentences; empty where nothing is to be done. */
  readonly todo: readonly string[];
  readonly speeds: readonly SpeedRow[];
}

/** The sheet's contents; null where the job gives no angles. */
export function angleSheet(joint: JointWithShaft): AngleSheet | null {
  const study = studyAngles(joint);
  if (!study) return null;
  const shims = studyShims(joint, study);
  const last = study.line.names.at(-1) ?? 'last shaft';
  const todo = (shims?.shims ?? []).map((shim) => shimWords(shim, last)).filter((text) => text !== '');
  const speeds = speedRows(study, todo.length === 0 ? null : shims);
  return { study, shims, todo, speeds };
}

const cell = (text: string): string => `<td class="number">${escaped(text)}</td>`;
const head = (titles: readonly string[]): string =>
  `<thead><tr>${titles.map((title, i) => `<th scope="col"${i === 0 ? '' : ' class="number"'}>${escaped(title)}</th>`).join('')}</tr></thead>`;

function jointTable({ study, shims, todo }: AngleSheet): string {
  const { line, angles, planes, angleDoubts } = study;
  const shimmed = shims !== null && todo.length > 0;
  const body = angles.map((angle, i) => {
    const kind = line.train.joints[i]?.kind ?? 'universal';
    const plane = (planes[i] as number) % 180;
    return `<tr><th scope="row">${i + 1}: ${escaped(line.names[i] as string)} to ${escaped(line.names[i + 1] as string)}, ${escaped(kind)}</th>${cell(`${angle.toFixed(2)} ±${(angleDoubts[i] as number).toFixed(1)}`)}${cell(plane.toFixed(0))}${shimmed ? cell((shims.angles[i] as number).toFixed(2)) : ''}</tr>`;
  });
  const titles = ['Joint', 'angle, degrees', 'plane, degrees from level', ...(shimmed ? ['angle with the shims'] : [])];
  return `<table>${head(titles)}<tbody>${body.join('\n')}</tbody></table>`;
}

function speedTable({ study, speeds }: AngleSheet): string {
  const { limits, line } = study;
  const mark = (value: number, limit: number) => `${value.toFixed(0)}${value > limit ? ' over' : ''}`;
  const numbers = line.train.joints.flatMap(({ kind }, i) => (kind === 'universal' ? [i + 1] : []));
  const shimmed = speeds.some((row) => row.shimmed !== null);
  const body = speeds.map(
    ({ rpm, train, shimmed: after, joints }) =>
      `<tr><th scope="row">${rpm.toFixed(0)} rpm</th>${cell(mark(train, limits.torsional))}${after === null ? '' : cell(mark(after, limits.torsional))}${joints.map((value) => cell(mark(value, limits.inertial))).join('')}</tr>`,
  );
  const titles = [
    'Speed',
    'whole train',
    ...(shimmed ? ['with the shims'] : []),
    ...numbers.map((n) => `joint ${n} alone`),
  ];
  return `<table>${head(titles)}<tbody>${body.join('\n')}</tbody></table><p class="source">rad/s2, greatest, twice per turn. Limits: whole train ${limits.torsional}, one joint ${limits.inertial}.</p>`;
}

function travelTable({ study, shims }: AngleSheet): string {
  if (study.stances.length < 2) return '';
  const body = study.stances.map(({ what, residual, angles }, i) => {
    const after = i === 0 ? shims?.after : shims?.travel.find((one) => one.what === what)?.residual;
    return `<tr><th scope="row">${escaped(what)}</th>${cell(angles.map((angle) => angle.toFixed(1)).join(', '))}${cell(residual.toFixed(2))}${cell(after === undefined ? '-' : after.toFixed(2))}</tr>`;
  });
  const titles = ['Axle at', 'joints, degrees', 'train as one joint at, degrees', 'with the shims'];
  return `<section><h2>Through the travel of the axle</h2><table>${head(titles)}<tbody>${body.join('\n')}</tbody></table></section>`;
}

/** The sheet as a page to print. `svg`: the picture of the line. */
export function angleSheetHtml(sheet: AngleSheet, title: string, svg: string): string {
  const { study, shims, todo } = sheet;
  const now = `As it lies, the train is as uneven as one joint at ${study.residual.toFixed(2)} degrees${study.speed === null ? `; up to ${evenAngle} passes at most speeds` : ''}.`;
  const then =
    shims === null
      ? ''
      : todo.length === 0
        ? ' No wedge makes it better.'
        : ` ${todo.join(' ')} That leaves ${shims.after.toFixed(2)} degrees (${shims.best.toFixed(2)} with shims to the last digit). Read the angles again afterwards.`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}: angles of the shaft</title>
<style>
${reportStyle}
figure svg{max-height:120mm}
</style>
</head>
<body>
<header><p class="kind">Angles of the shaft's joints by flangewright.</p><h1>${escaped(title)}</h1></header>
<main>
<p><strong>${escaped(now)}${escaped(then)}</strong></p>
<figure>${svg}<figcaption>Hold your readings against this picture: does each shaft lie as drawn? A wrong sign shows here.</figcaption></figure>
<section><h2>Joints</h2>${jointTable(sheet)}</section>
<section><h2>Speed</h2>${speedTable(sheet)}</section>
${travelTable(sheet)}
</main>
</body>
</html>
`;
}
