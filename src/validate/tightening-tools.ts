/** Is there room for the tool? Hexagons want a socket round them; socket screws take a key within their own head. */

import type { Joint, ScrewGroup } from '../job/joint.ts';
import { socketOutside } from '../job/tool-access.ts';
import type { Finding } from '../model/finding.ts';
import { passingHole } from '../rotor/plays.ts';
import { screwHead } from '../standards/screw-heads.ts';
import { hypot } from '../units/hypot.ts';
import { cos } from '../units/trig.ts';
import { type Check, judged } from './check.ts';
import { headRadius } from './heads.ts';
import { mm } from './words.ts';

/** Room beside a socket, mm. Common practice. */
const beside = 0.5;

const radius = ({ x, y }: { x: number; y: number }) => hypot(x, y);

/** One thing beside a socket: what it is and how near it comes, mm; negative runs into it. */
interface Neighbour {
  readonly what: string;
  readonly room: number;
}

/** The next screw of the same group, whose head or nut stands in the same plane. */
function nextHead({ positions }: ScrewGroup, socket: number, reach: number): Neighbour[] {
  let nearest = Number.POSITIVE_INFINITY;
  positions.forEach((a, i) => {
    for (const b of positions.slice(i + 1)) nearest = Math.min(nearest, hypot(a.x - b.x, a.y - b.y));
  });
  return Number.isFinite(nearest) ? [{ what: 'the next screw', room: nearest - socket - reach }] : [];
}

/** A spigot or ring that stands up on the face that the heads stand on. */
function standingRegister(joint: Joint, screws: ScrewGroup, socket: number): Neighbour[] {
  const hole = passingHole(joint, screws);
  if (screws.seat !== 'surface' || !hole) return [];
  const register = joint.adapterSpec.registers[hole.headFace];
  if (register?.gender === 'male' && register.at === 'inner') {
    const room = Math.min(...screws.positions.map(radius)) - socket - register.limits.upper / 2;
    return [{ what: `the ${hole.headFace} spigot`, room }];
  }
  if (register?.gender === 'female' && register.at === 'rim') {
    const room = register.limits.lower / 2 - Math.max(...screws.positions.map(radius)) - socket;
    return [{ what: `the ${hole.headFace} ring`, room }];
  }
  return [];
}

function room(joint: Joint, screws: ScrewGroup, acrossFlats: number, what: 'head' | 'nut'): Finding[] {
  const outside = socketOutside(acrossFlats);
  const reach = what === 'nut' ? acrossFlats / 2 / cos(Math.PI / 6) : headRadius(screws);
  const neighbours = [
    ...nextHead(screws, outside / 2, reach),
    ...(what === 'head' ? standingRegister(joint, screws, outside / 2) : []),
  ];
  if (neighbours.length === 0) return [];
  const tightest = neighbours.reduce((least, one) => (one.room < least.room ? one : least));
  return [
    judged(
      {
        code: 'tool-room',
        feature: screws.id,
        title: `room for a socket on the ${screws.thread} ${what}s, ${screws.side} side`,
        unit: 'mm',
        why: `A socket for ${mm(acrossFlats, 1)} across flats is about ${mm(outside, 1)} outside; ${tightest.what} is nearest to it. What stands round the joint besides is not known.`,
        cure: `Take a thin-walled socket or a ring spanner, or thinner screws (adapter.${screws.side}.screw).`,
        source: 'geometry; socket outside 1.5 x across flats + 1 mm: common practice',
      },
      tightest.room,
      { limit: beside, sense: 'at least', worst: 'caution' },
    ),
  ];
}

function ofGroup(joint: Joint, screws: ScrewGroup): Finding[] {
  const head = screws.head.kind === 'hex' ? screwHead('hex', screws.thread) : null;
  const flats = head?.ok ? head.value.s : undefined;
  return [
    ...(flats === undefined ? [] : room(joint, screws, flats, 'head')),
    ...(screws.nut ? room(joint, screws, screws.nut.acrossFlats, 'nut') : []),
  ];
}

export const toolRoom: Check = {
  id: 'tool-room',
  title: 'Room for tools',
  source: 'geometry; common practice',
  run: (joint) => joint.screws.flatMap((screws) => ofGroup(joint, screws)),
};
