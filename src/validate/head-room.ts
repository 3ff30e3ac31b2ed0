/** Heads, nuts and the wheel among their neighbours: flange rims, the wheel's bore, the room behind a flange. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { passingHole } from '../rotor/plays.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { headRadius } from './heads.ts';
import { atLeast, mm } from './words.ts';

/** Room between heads and a flange's rim or the wheel's bore, mm. Common practice. */
const beside = 1;
/** The same where both are turned or cut to a size that follows the other, mm. */
const besideWheelHeads = 0.3;

const nearest = (screws: ScrewGroup) => Math.min(...screws.positions.map(({ x, y }) => Math.hypot(x, y)));
const farthest = (screws: ScrewGroup) => Math.max(...screws.positions.map(({ x, y }) => Math.hypot(x, y)));

/** Heads that stand on a face of the adapter. */
function onFace(joint: Joint, screws: ScrewGroup): Finding[] {
  const hole = passingHole(joint, screws);
  if (screws.seat !== 'surface' || hole?.head.kind !== 'surface') return [];
  const flange = joint[hole.headFace];
  const findings = [
    judged(
      {
        code: 'heads-clear-flange',
        feature: screws.id,
        title: `${screws.thread} heads clear of the ${hole.headFace} flange`,
        unit: 'mm',
        why: `The heads stand on the face that the ${hole.headFace} flange (${mm(flange.outside.value)}) lies on.`,
        cure: `Sink the heads (adapter.${screws.side}.seat: sunk; adapter.${screws.side}.head: socket), or take flat ones (adapter.${screws.side}.head: flat).`,
        source: 'geometry; 1 mm of room is common practice',
      },
      nearest(screws) - headRadius(screws) - flange.outside.value / 2,
      { limit: beside, sense: 'at least', hard: 0 },
    ),
  ];
  if (!joint.wheelSpec || joint.job.wheel === undefined) return findings;
  const wheelFace = joint.job.wheel.on === 'adapter' ? joint.job.wheel.face : joint.job.wheel.on;
  if (wheelFace !== hole.headFace) return findings;
  findings.push(
    judged(
      {
        code: 'heads-clear-wheel',
        feature: screws.id,
        title: `${screws.thread} heads inside the wheel's bore`,
        unit: 'mm',
        why: `Heads on the ${hole.headFace} face stand in the way of the wheel (bore ${mm(joint.wheelSpec.bore)}).`,
        cure: `Sink the heads (adapter.${screws.side}.seat: sunk; adapter.${screws.side}.head: socket), put the wheel on the other face, or leave wheel.bore on auto.`,
        source: 'geometry; 1 mm of room is common practice',
      },
      joint.wheelSpec.bore / 2 - farthest(screws) - headRadius(screws),
      { limit: beside, sense: 'at least', hard: 0 },
    ),
  );
  return findings;
}

/** The wheel's own heads stand beside the flange that lies on the same face. */
function wheelHeads(joint: Joint, screws: ScrewGroup): Finding[] {
  if (screws.side !== 'wheel' || joint.job.wheel === undefined) return [];
  const flange = joint[joint.job.wheel.on === 'adapter' ? joint.job.wheel.face : joint.job.wheel.on];
  const room = nearest(screws) - headRadius(screws) - flange.outside.value / 2 - flange.outside.doubt;
  return [
    judged(
      {
        code: 'wheel-heads-clear-flange',
        feature: screws.id,
        title: `wheel screw heads clear of the ${flange.side} flange`,
        unit: 'mm',
        why: `The heads (${mm(screws.head.diameter)}) stand round the rim of the ${flange.side} flange (${mm(flange.outside.value)}).`,
        cure: `Make the screw circle at least ${atLeast(2 * (besideWheelHeads - room))} larger (wheel.screws.circle: ${atLeast(2 * (farthest(screws) + besideWheelHeads - room))}), or leave it on auto.`,
        source: 'geometry; 0.3 mm of room is common practice',
      },
      room,
      { limit: besideWheelHeads, sense: 'at least', hard: 0 },
    ),
  ];
}

/** Screws that come from behind a flange have to be got in there. */
function behind(joint: Joint, screws: ScrewGroup): Finding[] {
  if (screws.seat !== 'outside' || screws.side === 'wheel') return [];
  // Bolts through both flanges are put in from behind the driven one.
  const flange = screws.fastening === 'through' ? joint.driven : joint[screws.side];
  const common = {
    code: 'room-behind-flange',
    feature: screws.id,
    title: `room to put the ${screws.thread} screws in, behind the ${flange.side} flange`,
    source: `${screws.head.standard} head height; straight way in for the whole screw is common practice`,
  };
  if (flange.behind === null || screws.length === null) {
    const why =
      screws.length === null
        ? 'The length of the screws is not known.'
        : `The screws are ${mm(screws.length + screws.head.height)} long with their heads; the room behind the ${flange.side} flange is not known.`;
    const missing =
      flange.behind === null
        ? `Give ${flange.side}.behind: the free room behind the flange, mm.`
        : 'It follows from the screw length: see screw-length.';
    return [notAssessed({ ...common, why, missing })];
  }
  const washer = screws.washer?.thickness ?? 0;
  const head = screws.head.height + washer;
  return [
    judged(
      {
        ...common,
        unit: 'mm',
        why: `The whole screw, ${mm(screws.length + head)} with its head, goes in straight from behind; the head alone is ${mm(head)} high.`,
        cure:
          flange.behind < head
            ? 'The heads do not fit there: use lower heads, or into_flange or through on this side.'
            : 'Put the screws in before the flange goes on its shaft, or use shorter ones.',
      },
      flange.behind,
      { limit: screws.length + head, sense: 'at least', hard: head },
    ),
  ];
}

export const headRoom: Check = {
  id: 'head-room',
  title: 'Room for heads',
  source: 'geometry; common practice',
  run: (joint) =>
    joint.screws.flatMap((screws) => [
      ...onFace(joint, screws),
      ...wheelHeads(joint, screws),
      ...behind(joint, screws),
    ]),
};
