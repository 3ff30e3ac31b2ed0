/** What is measured on the finished wheel. mm and g. */
import type { Joint } from '../job/joint.ts';
import { hasWindows, type ToneWheelSpec, toothHeight, toothMeasures } from '../parts/tone-wheel.ts';
import { wheelBoreLimits, wheelCut } from '../rotor/wheel-links.ts';
import { foundOf, massRow, type Row } from './size-row.ts';

const asCut = 'tolerance of the cut';
const goesOn = 'tolerance of the cut, and what goes over its register';
const bothSides = 'tolerance of the cut, both sides';

/**
 * Windows, bars and rim of a wheel with windows; nothing for open teeth. Limits as the drawing has them for sizes that carry none of
 * their own: the tolerance of the cut.
 */
function windowRows(spec: ToneWheelSpec, cut: number): Row[] {
  const { rim, root, rootRadius } = spec;
  if (!hasWindows(spec) || rim === undefined) return [];
  const size = (id: string, what: string, nominal: number, gauge: string): Row => ({
    id,
    feature: 'wheel-outline',
    part: 'wheel',
    what,
    nominal,
    lower: Math.max(0, nominal - cut),
    upper: nominal + cut,
    unit: 'mm',
    from: asCut,
    gauge,
    mend: 'never',
    verb: 'cut',
    found: null,
  });
  return [
    size('wheel-rim', 'rim outside of the windows', rim, 'caliper'),
    size(
      'wheel-window-inside',
      'diameter of the inside of the windows',
      root,
      'caliper: from the edge of the bore to a window, twice, and the bore',
    ),
    size('wheel-window-height', 'height of a window', toothHeight(spec), 'caliper'),
    size('wheel-bar', 'bar across, in the middle of the windows', toothMeasures(spec).toothChord, 'caliper'),
    size('wheel-window-corner', 'round in the corners of the windows', rootRadius, 'radius gauge'),
  ];
}

/** Every size worth measuring on the wheel, its mass last; nothing without a wheel. */
export function wheelRows(joint: Joint): Row[] {
  const { wheelSpec: spec, wheelMass, wheelBore } = joint;
  const boreLimits = wheelBoreLimits(joint);
  if (!spec || !wheelMass || !boreLimits) return [];
  const [built, cut] = [joint.job.built?.wheel, wheelCut(joint)];
  const common = { part: 'wheel' as const, unit: 'mm' as const };
  return [
    {
      ...common,
      id: 'wheel-bore',
      feature: 'wheel-bore',
      what: 'bore of the wheel',
      nominal: spec.bore,
      ...boreLimits,
      from: wheelBore?.limits.zone ?? (boreLimits.lower > spec.bore - cut + 1e-9 ? goesOn : asCut),
      gauge: wheelBore?.gauge ?? 'caliper',
      mend: 'too small',
      verb: 'bore',
      found: foundOf(built?.bore),
    },
    {
      ...common,
      id: 'wheel-outside',
      feature: 'wheel-outline',
      what: hasWindows(spec) ? 'diameter of the rim' : 'diameter over the teeth',
      nominal: spec.outside,
      lower: spec.outside - 2 * cut,
      upper: spec.outside + 2 * cut,
      from: bothSides,
      gauge: 'caliper',
      mend: 'too large',
      verb: 'turn',
      found: foundOf(built?.outside),
    },
    ...windowRows(spec, cut),
    massRow('wheel', wheelMass.mass, built?.mass),
  ];
}
