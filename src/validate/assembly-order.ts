/** Can both sides' screws be got at, and which go in first? A flange lies over the heads of the other side's screws. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { coveringFlange } from '../job/tool-access.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, stated } from './check.ts';

const source = 'geometry: key and socket sizes against the flanges as measured';

type Covered = ScrewGroup & { readonly side: 'driving' | 'driven' };

const isCovered =
  (joint: Joint) =>
  (group: ScrewGroup): group is Covered =>
    coveringFlange(group, (side) => joint[side].outside.value) !== null;

const other = (side: Covered['side']) => (side === 'driving' ? 'driven' : 'driving');

/** Ways out for a side whose heads would have to be reached under the other flange. */
function wayOut(joint: Joint, { side }: Covered): string[] {
  return joint[side].holes.kind === 'tapped'
    ? [`drill the ${side} flange's threads out, so that its screws come from behind it`]
    : [`put the ${side} screws in from behind their flange (adapter.${side}.fastening: into_adapter)`];
}

function together(joint: Joint, groups: readonly Covered[]): Finding {
  const [first, second] = [...groups].sort(
    (a, b) => Number(a.fastening === 'through') - Number(b.fastening === 'through'),
  );
  const [a, b] = [first as Covered, second as Covered];
  const last =
    b.fastening === 'through'
      ? `the ${b.side} bolts then stick out of the adapter with their heads under the ${other(b.side)} flange, and nothing holds them while their nuts are tightened`
      : `the ${b.side} screws cannot be put in any more: their heads lie under the ${other(b.side)} flange`;
  const ways = [...new Set([...wayOut(joint, b), ...wayOut(joint, a)])];
  return stated(
    {
      code: 'assembly-order',
      feature: b.id,
      title: 'screws of both sides within reach',
      unit: '',
      why: `Each flange covers the other side's heads. The ${a.side} screws have to be tight before the ${other(a.side)} flange goes on; ${last}.`,
      cure: `Either ${ways.join(', or ')}; or make the adapter of two plates that are bolted together beside both patterns.`,
      source,
    },
    'fail',
  );
}

function inOrder(group: Covered): Finding {
  const { side, id, fastening, thread } = group;
  return stated(
    {
      code: 'assembly-order',
      feature: id,
      title: `${side} ${fastening === 'through' ? 'bolts' : 'screws'} first`,
      unit: '',
      why: `The ${other(side)} flange covers the heads of the ${thread} ${fastening === 'through' ? 'bolts' : 'screws'} of the ${side} side: tighten them before it goes on. To tighten them again it has to come off.`,
      cure: '',
      source,
    },
    'pass',
  );
}

export const assemblyOrder: Check = {
  id: 'assembly-order',
  title: 'Order of putting it together',
  source: 'geometry',
  run(joint) {
    const covered = joint.screws.filter(isCovered(joint));
    const [only] = covered;
    if (!only) return [];
    return [covered.length > 1 ? together(joint, covered) : inOrder(only)];
  },
};
