/** Screws: do they hold, bottom, or poke out? */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { isStocked } from '../standards/property-classes.ts';
import { standardLengths } from '../standards/screw-lengths.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { atLeast, mm, sourced } from './words.ts';

/** What is missing where no length can be worked out. */
function missingThickness(joint: Joint, screws: ScrewGroup): string {
  const unknown = (screws.fastening === 'through' ? (['driving', 'driven'] as const) : [screws.side]).filter(
    (side): side is 'driving' | 'driven' => side !== 'wheel' && joint[side].thickness === null,
  );
  return `Give ${unknown.map((side) => `${side}.thickness`).join(' and ')}: the thickness at the holes.`;
}

const isUnknown = ({ lengths }: ScrewGroup) => lengths.least === 0;

function engagement(joint: Joint, screws: ScrewGroup): Finding[] {
  if (screws.fastening === 'through') return [];
  const { has, needs, rule, memory } = screws.engagement;
  const common = {
    code: 'thread-engagement',
    feature: screws.id,
    title: `${screws.thread} thread engagement, ${screws.side} side`,
  };
  const why = `A class ${screws.class} screw needs ${mm(needs)}, ${rule}, so that the screw breaks before the thread strips.`;
  const source = sourced(rule, memory);
  if (has === null) {
    const missing = isUnknown(screws)
      ? missingThickness(joint, screws)
      : 'It follows from the screw length: see screw-length.';
    return [notAssessed({ ...common, why, missing, source })];
  }
  const { least, most } = screws.lengths;
  const isShort = screws.length !== null && screws.length < least && (most === null || most >= least);
  const cure = isShort
    ? `Take screws ${mm(least)} long or longer (adapter.${screws.side}.length: auto).`
    : `There is ${mm(needs - has)} of thread too little: take weaker screws (adapter.${screws.side}.class: 8.8), a stronger material, or thread inserts.`;
  return [judged({ ...common, unit: 'mm', why, cure, source }, has, { limit: needs, sense: 'at least' })];
}

/** Lengths that are made, in mm; none where no table has them. */
function made({ head, thread }: ScrewGroup): readonly number[] {
  const lengths = standardLengths(head.kind, thread);
  return lengths.ok ? lengths.value.lengths : [];
}

/** Lengths that differ by less are equal, mm. */
const rounding = 1e-9;

/** No standard length lies in the span. */
function noLength(screws: ScrewGroup, thickness: number): Finding {
  const { least, most, mostWhy } = screws.lengths;
  const common = {
    code: 'screw-length',
    feature: screws.id,
    title: `${screws.thread} screw length, ${screws.side} side`,
    unit: 'mm',
    source: screws.head.standard,
  };
  const next = made(screws).find((length) => length >= least - rounding);
  if (next === undefined) {
    const cure = `Take a thicker screw, another head, or a shorter way through: no ${screws.thread} ${screws.head.kind} screw is made that long.`;
    return stated(
      { ...common, why: `At least ${mm(least)} is needed, more than the longest that is usual.`, cure },
      'fail',
    );
  }
  const longest = most ?? 0;
  const cure =
    longest < least
      ? `There is ${mm(least - longest)} of thread too little for this screw: take class 8.8 (adapter.${screws.side}.class: 8.8), a smaller screw, or a deeper thread.`
      : `Make the adapter ${atLeast(next - longest)} thicker (adapter.thickness: ${atLeast(thickness + next - longest)}), or cut ${mm(next)} screws to ${mm(longest)}.`;
  const why = `At least ${mm(least)} holds, and at most ${mm(longest)} fits: ${mostWhy}. The next that is made is ${mm(next)}.`;
  return judged({ ...common, why, cure }, next, { limit: longest, sense: 'at most' });
}

function length(joint: Joint, screws: ScrewGroup): Finding[] {
  const { least, most, mostWhy } = screws.lengths;
  const common = {
    code: 'screw-length',
    feature: screws.id,
    title: `${screws.thread} screw length, ${screws.side} side`,
    source: screws.head.standard,
  };
  if (isUnknown(screws)) {
    const why = 'The screws pass through a flange whose thickness is not known.';
    return [notAssessed({ ...common, why, missing: missingThickness(joint, screws) })];
  }
  if (screws.length === null) return [noLength(screws, joint.adapterSpec.thickness)];
  if (most === null) {
    const into = screws.fastening === 'into_flange';
    const missing = into
      ? `Give ${screws.side}.holes.depth: the usable depth of thread; or through: true with ${screws.side}.thickness.`
      : `Give ${screws.side}.behind: the free room behind the flange, mm.`;
    const why = `${screws.thread} x ${Number(screws.length.toFixed(2))} is long enough; whether it ${into ? 'bottoms' : 'finds room'} is not known.`;
    return [notAssessed({ ...common, why, missing })];
  }
  const shorter = made(screws).findLast((candidate) => candidate <= most + rounding && candidate >= least - rounding);
  const cure = `Take a screw of at most ${mm(most)}${shorter === undefined ? '' : `: ${screws.thread} x ${Number(shorter.toFixed(2))}, or leave it open (adapter.${screws.side}.length: auto)`}.`;
  const why = `${screws.thread} x ${Number(screws.length.toFixed(2))}: ${mm(least)} is the least that holds; ${mostWhy}.`;
  return [judged({ ...common, unit: 'mm', why, cure }, screws.length, { limit: most, sense: 'at most' })];
}

/** Class 12.9 in a hexagon head: no standard lists it, whoever typed it must find a maker. */
function stocked({ id, side, thread, head, class: cls }: ScrewGroup): Finding[] {
  if (isStocked(cls, head.kind)) return [];
  return [
    stated(
      {
        code: 'screw-class',
        feature: id,
        title: `class ${cls} in ${thread} hexagon heads, ${side} side`,
        unit: '',
        why: 'Hexagon heads are listed in 5.6, 8.8, 9.8 and 10.9 (ISO 4014, ISO 4017), inch ones up to grade 8: class 12.9 is no stock item. What is sold as such without a certificate may be anything.',
        cure: `Take socket heads (adapter.${side}.head: socket), which are stocked in 12.9 (ISO 4762), or class 10.9 (adapter.${side}.class: 10.9).`,
        source: sourced('ISO 4014; ISO 4017; ISO 4762', true),
      },
      'caution',
    ),
  ];
}

function reachesNut(screws: ScrewGroup): Finding[] {
  if (screws.fastening !== 'through' || isUnknown(screws) || screws.length === null) return [];
  const { least } = screws.lengths;
  return [
    judged(
      {
        code: 'bolt-reaches-nut',
        feature: screws.id,
        title: `${screws.thread} bolts reach through their nuts, ${screws.side} side`,
        unit: 'mm',
        why: 'Two threads must show beyond the nut.',
        cure: `Take bolts of at least ${mm(least)} (adapter.${screws.side}.length: auto).`,
        source: 'common practice',
      },
      screws.length,
      { limit: least, sense: 'at least' },
    ),
  ];
}

export const screws: Check = {
  id: 'screws',
  title: 'Screws',
  source: 'thread engagement by published trials; ISO and ASME lengths; common practice',
  run: (joint) =>
    joint.screws.flatMap((group) => [
      ...stocked(group),
      ...engagement(joint, group),
      ...length(joint, group),
      ...reachesNut(group),
    ]),
};
