/** The bracket against itself: tools on its bolts between the legs, and the sensor beside its own foot. */
import { boxGap } from '../geometry/box-gap.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { BracketInput } from '../job/schema-bracket.ts';
import { socketOutside } from '../job/tool-access.ts';
import type { Finding } from '../model/finding.ts';
import { screwHead } from '../standards/screw-heads.ts';
import { washerFor } from '../standards/washers.ts';
import { cos, sin, tan } from '../units/trig.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { atLeast, mm } from './words.ts';

/** Room beside a socket, mm. Common practice. */
const beside = 0.5;
/** A ring spanner goes over the head from above: the head twice, and this, mm. Common practice. */
const overRing = 3;
/** An open spanner comes from the side: this over the head, mm. Common practice. */
const overOpen = 1;
/** Room between the sensor and the bracket's own foot, mm: asked for, and the least. Common practice. */
const besideSensor = { usual: 1, least: 0.5 };

interface Head {
  readonly flats: number;
  /** Washer and head together, mm. */
  readonly height: number;
  readonly washer: number;
  readonly head: number;
}

function headOf(size: string): Head | null {
  const [hex, washer] = [screwHead('hex', size), washerFor(size)];
  if (!hex.ok || hex.value.s === undefined) return null;
  const under = washer.ok ? washer.value.thickness : 0;
  return { flats: hex.value.s, washer: under, head: hex.value.k, height: under + hex.value.k };
}

/** True where the first bend folds to the side on which the heads stand; not on an offset that steps down. */
function foldsOverHeads({ spec, plane }: Bracket, form: BracketInput['form']): boolean {
  const [first] = spec.bends;
  if (first === undefined) return false;
  // The heads of an offset stand on the face that looks away from the teeth (q); its strip lies with that face below (n).
  return form !== 'offset' || (first.direction === 'up') === plane.n.q > 0;
}

/**
 * From the row of bolts to the leg beside it at a height over the foot, mm: on the round of the bend, or on the leg above it.
 * Source: plane geometry.
 */
export function toLeg(run: number, radius: number, angle: number, height: number): number {
  const a = (angle * Math.PI) / 180;
  const top = radius * (1 - cos(a));
  if (height < top) return run + Math.sqrt(radius ** 2 - (radius - height) ** 2);
  return run + radius * sin(a) + (height - top) / tan(a);
}

/** The socket against the leg that stands up beside the bolts. */
function besideLeg(bracket: Bracket, head: Head, size: string): Finding {
  const { foot, straights, bends } = bracket.spec;
  const [first] = bends;
  const run = (straights[0] ?? 0) - foot.edge;
  const leg = toLeg(run, first?.radius ?? 0, first?.angle ?? 90, head.washer);
  const outside = socketOutside(head.flats);
  const room = leg - foot.travel / 2 - outside / 2;
  return judged(
    {
      code: 'bracket-socket',
      feature: 'bracket-bolt-1',
      title: `room for a socket on the ${size} bolts, beside the leg`,
      unit: 'mm',
      why: `A socket for ${mm(head.flats, 1)} across flats is about ${mm(outside, 1)} outside; at the near end of the slots the leg begins ${mm(leg - foot.travel / 2)} from the bolts.`,
      cure: `Take a ring spanner or a thin-walled socket, bolt it ${atLeast(beside - room)} farther from the bend (bracket.bolts), or use smaller bolts.`,
      source: 'geometry; socket outside 1.5 x across flats + 1 mm: common practice',
    },
    room,
    { limit: beside, sense: 'at least', worst: 'caution' },
  );
}

/** Heads and spanners under the arm of a channel. */
function underArm(bracket: Bracket, head: Head, size: string): Finding[] {
  const { foot, arm, straights, bends } = bracket.spec;
  const [first, second] = bends;
  if (first === undefined || second === undefined) return [];
  // Bolts that stand wide of the arm are reached from above.
  if (foot.spacing / 2 - socketOutside(head.flats) / 2 >= arm.width / 2) return [];
  const height = (straights[1] ?? 0) + first.radius + second.radius;
  const left = height - head.height;
  return [
    judged(
      {
        code: 'bracket-under-arm',
        feature: 'bracket-bolt-1',
        title: `room over the ${size} heads, under the arm`,
        unit: 'mm',
        why: `The arm runs back over the bolts ${mm(height)} above the foot; washer and head take ${mm(head.height)}. No socket gets in: a ring spanner needs the height of the head (${mm(head.head)}) and ${mm(overRing, 0)} more, an open one comes from the side.`,
        cure: 'Bolt it lower (bracket.bolts), use socket screws with a short key or weld studs, or make the arm narrower than the bolts stand apart (bracket.width).',
        source: 'geometry; room for spanners is common practice, no source',
      },
      left,
      { limit: head.head + overRing, sense: 'at least', hard: overOpen },
    ),
  ];
}

/** Corners of the profile before the last bend: foot, and the web of a bracket with two bends. */
function beforeLastBend({ plane, spec }: Bracket): { readonly p: number; readonly q: number }[] {
  const { profile } = plane;
  // Lower face outwards, upper face back: two ends, and as many points on each bend.
  const perBend = (profile.length / 2 - 2) / spec.bends.length;
  const count = 2 + perBend * (spec.bends.length - 1);
  return [...profile.slice(0, count), ...profile.slice(-count)];
}

/** The sensor, nose and what stands out behind it, beside the bracket's own foot and web. */
function ownFoot(bracket: Bracket, { sensor }: BracketInput): Finding {
  const half = sensor.bore / 2;
  const seat = bracket.gap.nominal + sensor.reach;
  const top = seat + (sensor.behind ?? 0);
  const box = { pMin: -half, pMax: half, qMin: bracket.gap.nominal, qMax: top };
  const gap = boxGap(beforeLastBend(bracket), box);
  return judged(
    {
      code: 'bracket-own-foot',
      feature: 'bracket-sensor',
      title: "sensor clear of the bracket's own foot",
      unit: 'mm',
      why:
        sensor.behind === undefined
          ? 'The nose, from tip to ear, beside foot and web in the plane of the bends. What stands out behind the ear is not known (bracket.sensor.behind).'
          : `From the tip to ${mm(sensor.behind, 1)} behind the ear (body, plug, cable), beside foot and web in the plane of the bends.`,
      cure: `Bolt it ${atLeast(besideSensor.usual - gap)} farther from the sensor (bracket.bolts), or take another bracket.form.`,
      source: 'geometry; 1 mm of room is common practice',
    },
    gap,
    { limit: besideSensor.usual, sense: 'at least', hard: besideSensor.least },
  );
}

export const bracketRoom: Check = {
  id: 'bracket-room',
  title: 'Bracket: room for tools and for the sensor',
  source: 'geometry; common practice',
  run({ bracket, job }) {
    if (!bracket || !job.bracket || bracket.spec.bends.length === 0) return [];
    const { form, bolts } = job.bracket;
    const own = ownFoot(bracket, job.bracket);
    if (!foldsOverHeads(bracket, form)) return [own];
    const head = headOf(bolts.size);
    if (head === null) {
      return [
        own,
        notAssessed({
          code: 'bracket-socket',
          feature: 'bracket-bolt-1',
          title: `room for a socket on the ${bolts.size} bolts, beside the leg`,
          why: `No hexagon head of ${bolts.size} is known.`,
          missing: 'Give a size of ISO 4017 in bracket.bolts.size, or hold a socket to it.',
          source: 'ISO 4017',
        }),
      ];
    }
    return [
      own,
      besideLeg(bracket, head, bolts.size),
      ...(form === 'channel' ? underArm(bracket, head, bolts.size) : []),
    ];
  },
};
