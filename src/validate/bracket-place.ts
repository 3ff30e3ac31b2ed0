/** Does the bracket bring the sensor to the wheel, can the gap be set, and does it keep clear of what turns? */
import { boxGap } from '../geometry/box-gap.ts';
import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import { wordsOf } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { nutFor } from '../standards/hex-nuts.ts';
import { findThread } from '../standards/threads.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { atLeast, mm, sourced } from './words.ts';

/** Room between the bracket and what turns, mm: asked for, and the least. Common practice. */
const room = { usual: 3, least: 1 };
/** Room under the ear's nut, mm. Common practice. */
const underNut = 2;

/** How far the gap can be moved both ways, against what it must be moved at worst. */
function setting({ gap, setting: how, spec, packing }: Bracket): Finding[] {
  const common = { feature: 'bracket-outline', unit: 'mm' };
  if (how === 'slots') {
    const each = spec.foot.travel / 2;
    const closing = atLeast(2 * (gap.build + Math.max(gap.nominal, gap.tolerance)));
    const opening = atLeast(2 * (gap.build + gap.tolerance));
    const source = `common practice: everything together comes out within ${mm(gap.build, 0)}`;
    return [
      judged(
        {
          ...common,
          code: 'bracket-gap-closes',
          title: 'gap with the bracket pushed in as far as its slots let it',
          why: `The gap is set to ${mm(gap.nominal)}. If everything comes out ${mm(gap.build, 0)} too far off, the slots must still bring the tip down onto the gap card.`,
          cure: `Make the slots ${closing} long (bracket.slot: ${closing}), or leave them on auto.`,
          source,
        },
        gap.nominal - each,
        { limit: gap.nominal - gap.build, sense: 'at most', hard: gap.nominal - gap.build / 2 },
      ),
      judged(
        {
          ...common,
          code: 'bracket-gap-opens',
          title: 'gap with the bracket pulled out as far as its slots let it',
          why: `If everything comes out ${mm(gap.build, 0)} too near, the slots must still open the gap to ${mm(gap.nominal)}, and to its upper end.`,
          cure: `Make the slots ${opening} long (bracket.slot: ${opening}), or leave them on auto.`,
          source,
        },
        gap.nominal + each,
        {
          limit: gap.nominal + gap.tolerance + gap.build,
          sense: 'at least',
          hard: gap.nominal + gap.build / 2,
        },
      ),
    ];
  }
  const standing = how === 'stand-offs';
  return [
    judged(
      {
        ...common,
        code: 'bracket-packing',
        title: standing ? 'length of the stand-offs' : 'shims under the foot',
        why: standing
          ? `The plate lies ${mm(packing)} over its pad; the gap is set by turning the stand-offs shorter or with shims.`
          : 'Slots along the plate do not change the gap: shims under the foot do. Some must be there to be taken out.',
        cure: standing
          ? 'The pad is too high for a plate: use form: offset, or bolt it lower (bracket.bolts).'
          : `Leave room for shims (bracket.packing: ${atLeast(gap.build)}).`,
        source: `common practice: everything together comes out within ${mm(gap.build, 0)}`,
      },
      packing,
      { limit: gap.build, sense: 'at least', hard: 0 },
    ),
  ];
}

/** The nearest turning part, for each that is known. The foot is taken at the inner end of its slots. */
function clearances({ plane, spec, setting: how }: Bracket): Finding[] {
  const slack = how === 'slots' ? spec.foot.travel / 2 : 0;
  const profile = plane.profile.map(({ p, q }) => ({ p, q: q - slack }));
  const gaps = plane.turning.map((box) => ({ name: box.name, gap: boxGap(profile, box) }));
  const nearest = gaps.reduce((a, b) => (b.gap < a.gap ? b : a));
  return [
    judged(
      {
        code: 'bracket-clearance',
        feature: 'bracket-outline',
        title: `bracket clear of the ${nearest.name}`,
        unit: 'mm',
        why: `The nearest of what turns here: ${gaps.map(({ name }) => name).join(', ')}. What turns behind the flanges (shaft, yokes, hoses) is not known.`,
        cure: `Move the face for the bolts ${atLeast(room.usual - nearest.gap)} away (bracket.bolts.along, from_axis), or use thinner sheet.`,
        source: 'geometry; 3 mm is common practice',
      },
      nearest.gap,
      { limit: room.usual, sense: 'at least', hard: room.least },
    ),
  ];
}

/** The nut of the ear's screw hangs between the bracket and the teeth. */
function earNut({ gap, spec }: Bracket, bracket: NonNullable<Joint['job']['bracket']>, teeth: string): Finding[] {
  const { ear, reach } = bracket.sensor;
  if (!ear) return [];
  const title = `room between the ${teeth} and the nut of the sensor's ear`;
  const [nut, thread] = [nutFor(ear.size), findThread(ear.size)];
  const feature = 'bracket-ear';
  if (!nut.ok || !thread.ok) {
    return [
      notAssessed({
        code: 'bracket-ear-nut',
        feature,
        title,
        why: `No nut of ${ear.size} is known.`,
        missing: 'Give a size of ISO 4032 in bracket.sensor.ear.size, or weld a nut on and look.',
        source: 'ISO 4032',
      }),
    ];
  }
  const hangs = nut.value.height + 2 * thread.value.pitch;
  const left = gap.nominal + reach - spec.thickness - hangs;
  return [
    judged(
      {
        code: 'bracket-ear-nut',
        feature,
        title,
        unit: 'mm',
        why: `The nut (${mm(nut.value.height, 1)}) and two threads of screw hang below the sheet, near the ${teeth}.`,
        cure: `Tap or rivet a thread into the bracket, use a shorter screw or thinner sheet, or turn the ear away from the ${teeth} (bracket.sensor.ear.towards: foot).`,
        source: sourced(`${nut.value.source}; 2 mm of room is common practice`, nut.value.memory),
      },
      left,
      { limit: underNut, sense: 'at least', hard: 0.5 },
    ),
  ];
}

export const bracketPlace: Check = {
  id: 'bracket-place',
  title: 'Bracket: gap and room',
  source: 'geometry; common practice',
  run({ bracket, job }) {
    if (!bracket || !job.bracket) return [];
    return [...setting(bracket), ...clearances(bracket), ...earNut(bracket, job.bracket, wordsOf(job.wheel).teeth)];
  },
};
