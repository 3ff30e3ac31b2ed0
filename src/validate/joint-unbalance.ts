/** The unbalance of the whole joint: shapes, what rides off centre, screws that differ; and what spoils it most. */

import { permissibleUnbalance, twoPlaneUnbalance } from '../formulas/balance.ts';
import { type Link, stackOf } from '../formulas/chain.ts';
import { sharesOf } from '../formulas/chain-shares.ts';
import { axisTilt } from '../formulas/rigid-bodies.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { bodiesOf, shaftShare, spinningMass, unbalanceLinks, wholeOf } from '../rotor/unbalance.ts';
import { balanceGrade, driveShaftGrades } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { hypot } from '../units/hypot.ts';
import { anglesSaid, cureOfChain, listedShort, startWith } from './chain-words.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { notRead } from './concentricity.ts';
import { angle, sourced } from './words.ts';

/** So many of the greatest pulls are named. */
const mostNamed = 5;

/** The greatest pulls, in words. */
const greatest = (links: readonly Link[]): string =>
  `In g.mm, greatest first: ${listedShort(sharesOf(links), mostNamed, { unit: '', decimals: 0 })}.`;

/** What the joint is made of, in words: masses that ride. */
function ridden(joint: Joint): string {
  const kilos = (grams: number) => `${(grams / 1000).toFixed(2)} kg`;
  const screws = bodiesOf(joint).filter(({ id }) => id !== 'adapter' && id !== 'wheel');
  const parts = [
    ...bodiesOf(joint)
      .filter(({ id }) => id === 'adapter' || id === 'wheel')
      .map(({ what, mass }) => `${what} ${kilos(mass.mass)}`),
    `screws ${kilos(screws.reduce((sum, { mass }) => sum + mass.mass, 0))}`,
    ...(shaftShare(joint) > 0 ? [`half the shaft ${kilos(shaftShare(joint))}`] : []),
  ];
  return `${parts.join(', ')}.${shaftShare(joint) > 0 ? '' : ' The shaft is not counted: give shaft.mass.'}`;
}

/** How the drawn shape pulls in two planes, and how far its own axis leans. */
function planes(joint: Joint): string {
  const whole = wholeOf(joint);
  const { low, high } = twoPlaneUnbalance(whole, 0, joint.adapterSpec.thickness);
  const lean = axisTilt(whole.inertia).degrees;
  return `By shape alone: ${hypot(low.x, low.y).toFixed(1)} g.mm in the driving face's plane, ${hypot(high.x, high.y).toFixed(1)} in the driven one's; its own axis leans ${angle(Number(lean.toFixed(3)))}.`;
}

function jointUnbalance(joint: Joint): Finding[] {
  const { duty } = joint.job;
  const { words, notGiven } = notRead(joint, 'rim');
  const common = {
    code: 'joint-unbalance',
    feature: 'body',
    title: 'unbalance of the whole joint as put together',
    notGiven,
    source: 'U = m e (definition); half of the shaft rides on each end (statics); ISO 21940-11',
  };
  const links = unbalanceLinks(joint);
  const { worst, likely } = stackOf(links);
  const mass = spinningMass(joint);
  const memory = links.some((link) => link.memory);
  if (duty?.speed === undefined) {
    const why = `At worst ${worst.toFixed(0)} g.mm, likely ${likely.toFixed(0)} g.mm. ${ridden(joint)} ${greatest(links)}${words}${anglesSaid(links)}`;
    return [notAssessed({ ...common, why, missing: 'Give duty.speed: how much is too much hangs on the speed.' })];
  }
  const { speed } = duty;
  const allows = (G: number) => permissibleUnbalance(mass, G, speed);
  const both = driveShaftGrades.map((name) => {
    const one = must(balanceGrade(name));
    return `${one.name} allows ${allows(one.G).toFixed(0)}`;
  });
  const grade = must(balanceGrade(duty.grade));
  const limit = allows(grade.G);
  return [
    judged(
      {
        ...common,
        unit: 'g.mm',
        why: `Worst case is the sum of all pulls; likely ${likely.toFixed(0)} g.mm. At ${speed} rpm ${both.join(', ')} (both are listed for drive shafts). ${ridden(joint)} ${greatest(links)}${words} ${planes(joint)}${anglesSaid(links)}`,
        cure: cureOfChain(links, worst / mass, speed, grade),
        improve: startWith(links),
        source: sourced(common.source, memory),
      },
      worst,
      // Meeting the limit in the likely case only is a caution: balancing in place settles it.
      { limit, sense: 'at most', worst: likely <= limit ? 'caution' : 'fail' },
    ),
  ];
}

export const jointBalance: Check = {
  id: 'joint-unbalance',
  title: 'Unbalance of the whole joint',
  source: 'ISO 21940-11; statics',
  run: jointUnbalance,
};
