/** Screws: do they hold, bottom, or poke out, and do they go through the flange's holes? */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { mm, sourced } from './words.ts';

function engagement(screws: ScrewGroup): Finding[] {
  if (screws.fastening === 'through') return [];
  const { has, needs, rule, memory } = screws.engagement;
  const title = `${screws.thread} thread engagement, ${screws.side}`;
  if (has === null) return [];
  return [
    judged(
      {
        code: 'thread-engagement',
        feature: screws.id,
        title,
        unit: 'mm',
        why: `${screws.class} screws need ${rule} so that the screw breaks before the thread strips.`,
        cure: 'Take longer screws, a thicker adapter, a stronger material, or thread inserts.',
        source: sourced(rule, memory),
      },
      has,
      { limit: needs, sense: 'at least' },
    ),
  ];
}

function length(screws: ScrewGroup): Finding[] {
  const { least, most, mostWhy } = screws.lengths;
  const common = { feature: screws.id, title: `${screws.thread} screw length, ${screws.side}` };
  if (least === 0) {
    const flange = screws.side === 'wheel' ? 'driving' : screws.side;
    return [
      notAssessed({
        ...common,
        code: 'screw-length',
        why: 'The screws pass through the flange, whose thickness is not known.',
        missing: `Give ${flange}.thickness${screws.label.includes('both') ? ' of both flanges' : ''}.`,
        source: screws.head.standard,
      }),
    ];
  }
  if (screws.length === null) {
    const span = most === null ? `at least ${mm(least)}` : `between ${mm(least)} and ${mm(most)}`;
    return [
      judged(
        {
          ...common,
          code: 'screw-length',
          unit: 'mm',
          why: `No standard ${screws.thread} length is ${span}: ${mostWhy}.`,
          cure:
            most !== null && most < least
              ? 'There is not enough thread for this screw: a thicker adapter, a deeper thread, or a smaller screw.'
              : 'Change the thickness by a few millimetres, add a washer, or cut screws to length.',
          source: screws.head.standard,
        },
        most ?? 0,
        { limit: Math.max(least, (most ?? 0) + 0.01), sense: 'at least' },
      ),
    ];
  }
  const out: Finding[] = [];
  if (most !== null) {
    out.push(
      judged(
        {
          ...common,
          code: 'screw-length',
          unit: 'mm',
          why: `${screws.thread} x ${screws.length}: ${mm(least)} is the least that holds; ${mostWhy}.`,
          cure: screws.length > most ? `Take a screw of at most ${mm(most)}.` : '',
          source: screws.head.standard,
        },
        screws.length,
        { limit: most, sense: 'at most' },
      ),
    );
  } else {
    const flange = screws.side === 'wheel' ? 'driving' : screws.side;
    out.push(
      notAssessed({
        ...common,
        code: 'screw-length',
        why: `${screws.thread} x ${screws.length} is long enough; whether it bottoms or finds room is not known.`,
        missing: screws.fastening === 'into_flange' ? `Give ${flange}.holes.depth (usable thread depth) or through: true with ${flange}.thickness.` : `Give ${flange}.behind: the free room behind the flange.`,
        source: screws.head.standard,
      }),
    );
  }
  if (screws.fastening === 'through') {
    out.push(
      judged(
        {
          ...common,
          code: 'bolt-reaches-nut',
          title: `${screws.thread} bolts reach through their nuts, ${screws.side}`,
          unit: 'mm',
          why: 'Two threads must show beyond the nut.',
          cure: `Take bolts of at least ${mm(least)}.`,
          source: 'common practice',
        },
        screws.length,
        { limit: least, sense: 'at least' },
      ),
    );
  }
  return out;
}

/** Position error of drilled and punched holes, mm radial. Common practice for holes drilled on a read-out. */
const drillPosition = 0.05;

/** The flanges that a group's screws go through or into: both, for bolts that run through all three pieces. */
function flangesOf(joint: Joint, screws: ScrewGroup): ('driving' | 'driven')[] {
  if (screws.side === 'wheel') return [];
  const other = screws.side === 'driving' ? 'driven' : 'driving';
  return joint.screws.some((group) => group.side === other) ? [screws.side] : [screws.side, other];
}

/** Play between screw and the tightest hole it passes, against what may be out of place. */
function holesClear(joint: Joint, screws: ScrewGroup): Finding[] {
  const shape = joint.adapterSpec.groups.find((group) => group.id === screws.id)?.shape;
  return flangesOf(joint, screws).map((side) => {
    const { holes } = joint[side];
    const passed = [
      ...(shape?.kind === 'passing' ? [shape.diameter] : []),
      ...(holes.kind === 'clear' ? [holes.diameter.value] : []),
    ];
    const hole = Math.min(...passed);
    const needs = 2 * (holes.doubt + drillPosition);
    return judged(
      {
        code: 'holes-clear',
        feature: screws.id,
        title: `${screws.thread} screws go through, ${side}`,
        unit: 'mm',
        why: `Play of the screw in its ${mm(hole)} hole, against holes that may be ${mm(holes.doubt, 3)} (as measured) and ${mm(drillPosition, 3)} (as drilled) out of place.`,
        cure: 'Measure the bolt circle better (more chords, repeated), use the next series of clearance hole, or drill through the flange as a template.',
        source: 'geometry; drilled position of 0.05 mm is common practice',
      },
      hole - screws.major,
      { limit: needs, sense: 'at least', hard: Math.min(needs, 0.05) },
    );
  });
}

export const screws: Check = {
  id: 'screws',
  title: 'Screws',
  source: 'thread engagement by published trials; ISO and ASME lengths; common practice',
  run: (joint) => joint.screws.flatMap((group) => [...engagement(group), ...length(group), ...holesClear(joint, group)]),
};
