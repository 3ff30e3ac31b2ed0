/** Metal left between features, at every depth. */
import { leastWebs, type Web } from '../geometry/web-pairs.ts';
import { webBetween } from '../geometry/webs.ts';
import type { Joint } from '../job/joint.ts';
import type { Drilling, Feature, TurnedPart } from '../model/part.ts';
import { type Check, judged } from './check.ts';
import { fewerScrews } from './fewer-screws.ts';
import { type Neighbour, thinnestTowards } from './outside-of-holes.ts';
import { atLeast, mm, roundedDown } from './words.ts';

type WebCode =
  | 'web-between-holes'
  | 'wall-to-bore'
  | 'wall-to-rim'
  | 'wall-to-flats'
  | 'wall-bore-to-outside'
  | 'web-between-recesses';

/** A web with the features at its two ends; null for the outside and the flats. */
interface Named {
  readonly web: Web;
  readonly code: WebCode;
  /** Feature of the drilling that the web is counted from: of bore and recesses in one piece the bore. */
  readonly feature: string;
  readonly a: Feature;
  readonly b: Feature | null;
}

const isAxial = ({ purpose }: Feature) => purpose === 'bore' || purpose === 'recess';

/** Which finding a pair belongs to, by what the two features are for. */
function codeOf(a: Feature, b: Feature | null, other: string): WebCode {
  if (other === 'outside') return isAxial(a) ? 'wall-bore-to-outside' : 'wall-to-rim';
  if (other === 'flats' || b === null) return 'wall-to-flats';
  if (isAxial(a) && isAxial(b)) return 'web-between-recesses';
  return isAxial(a) || isAxial(b) ? 'wall-to-bore' : 'web-between-holes';
}

const titles: Readonly<Record<WebCode, string>> = {
  'web-between-holes': 'web between holes',
  'wall-to-bore': 'wall between holes and the bore or recess',
  'wall-to-rim': 'wall between holes and the rim, steps and far face',
  'wall-to-flats': 'wall between holes and the vise flats',
  'wall-bore-to-outside': 'wall between the bore and the outside',
  'web-between-recesses': 'web between the two recesses',
};

/** What to do where a hole comes too near the outside of the part. */
function outsideCure(
  { adapterSpec: spec, wheelSpec }: Joint,
  { side }: Feature,
  neighbour: Neighbour,
  short: number,
): string {
  switch (neighbour.kind) {
    case 'rim':
      return `Make the outside at least ${atLeast(2 * short)} larger (adapter.outside: ${atLeast(spec.outside + 2 * short)}), or use smaller screws or heads.`;
    case 'step':
      return `Use smaller screws or heads on the ${side} side, or no register on the other side (adapter.${neighbour.side}.register: none): the step has the ${neighbour.side} flange's own size.`;
    case 'spigot':
      return `Use smaller screws or heads on the ${side} side, flat heads included, or no register on the other side (adapter.${neighbour.side}.register: none), or fasten one side another way.`;
    case 'wheel seat':
      return `Make the wheel's bore at least ${atLeast(2 * short)} larger (wheel.bore: ${atLeast((wheelSpec?.bore ?? 0) + 2 * short)}), or leave it on auto.`;
    case 'far face':
      return `Make the adapter at least ${atLeast(short)} thicker (adapter.thickness: ${atLeast(spec.thickness + short)}), or the thread less deep.`;
  }
}

/** What to do about a web that is `short` mm too thin. */
function cureFor({ code, a, b, web }: Named, joint: Joint, short: number): string {
  const { adapterSpec: spec, clocking, job } = joint;
  const dowel = [a, b].find((feature) => feature?.purpose === 'dowel hole');
  if (dowel && code !== 'wall-to-flats') {
    const key = `adapter.${dowel.side}.dowels`;
    return `Leave ${key}.circle and .first on auto, or take thinner pins or fewer of them (${key}: { size, count }).`;
  }
  switch (code) {
    case 'web-between-holes': {
      const { best } = clocking;
      // Nothing is to be cured where the web is thick enough.
      const fewer = (of: Feature['side'] | 'both') =>
        short <= 0 || of === 'wheel' || of === undefined ? '' : fewerScrews(joint, of, job.adapter.web);
      if (a.side === 'wheel' || b?.side === 'wheel')
        return "Turn the wheel's screws (wheel.screws.first: auto), or take another count of them or a larger circle.";
      if (a.side === b?.side)
        return `Neighbours of the ${a.side} pattern stand too near: use smaller screws or heads (adapter.${a.side}.screw, .head)${fewer(a.side)}.`;
      if (best.web !== null && best.web >= job.adapter.web) return 'Turn the driven pattern: see clocking.';
      return `No angle leaves enough metal (best ${mm(best.web ?? web.gap)}): use smaller heads or screws, or fasten one side another way (adapter.driving.fastening, adapter.driven.fastening)${fewer('both')}.`;
    }
    case 'wall-to-bore': {
      const hole = isAxial(a) ? b : a;
      const axial = isAxial(a) ? a : b;
      const smaller =
        axial?.purpose === 'bore' && spec.bore !== null && spec.bore > 2 * short
          ? `Make the bore at least ${atLeast(2 * short)} smaller (adapter.bore: ${roundedDown(spec.bore - 2 * short, 1)} mm), or u`
          : 'U';
      return `${smaller}se smaller screws or heads on the ${hole?.side ?? 'driving'} side.`;
    }
    case 'wall-to-rim':
      return outsideCure(joint, a, thinnestTowards(joint, web.a), short);
    case 'wall-to-flats':
      return `Set the flats at least ${atLeast(2 * short)} further apart (adapter.flats), or leave them out (adapter.flats: none).`;
    case 'wall-bore-to-outside':
      return `Make the bore at least ${atLeast(2 * short)} smaller${spec.bore === null || spec.bore <= 2 * short ? ' (adapter.bore)' : ` (adapter.bore: ${roundedDown(spec.bore - 2 * short, 1)} mm)`}.`;
    case 'web-between-recesses':
      return `Make the adapter at least ${atLeast(short)} thicker (adapter.thickness: ${atLeast(spec.thickness + short)}).`;
  }
}

/** Plain name of a drilling: its feature's label, or its side and number in the group. */
function nameOf(id: string, feature: Feature | null): string {
  if (feature === null) return id === 'flats' ? 'the flats' : 'the outside';
  const number = /-(\d+)$/.exec(id)?.[1];
  if (number === undefined || feature.group === undefined) return feature.label;
  return `${feature.side} ${feature.purpose === 'dowel hole' ? 'dowel hole' : 'hole'} ${number}`;
}

function whyOf({ web, a, b }: Named, joint: Joint): string {
  const [one, other] = [
    nameOf(web.a, a),
    web.b === 'outside' && !isAxial(a) ? thinnestTowards(joint, web.a).name : nameOf(web.b, b),
  ];
  if (web.a === web.b) return `Thinnest metal between the two faces, round the ${a.label}.`;
  return web.gap < 0
    ? `${one} and ${other} run ${mm(-web.gap)} into each other.`
    : `Thinnest metal, at any depth, lies between ${one} and ${other}.`;
}

/** What is turned on the axis is one drilling of several features, bore and recesses: the one whose stretch a hole comes nearest to. */
function nearestStretch(axial: Drilling, hole: Drilling): string {
  const { profile } = axial;
  const names = [...new Set(profile.map(({ of }) => of ?? axial.feature))];
  const gaps = names.map((name) => {
    const isOf = (at: number) => (profile[at]?.of ?? axial.feature) === name;
    // A stretch runs from its own corner to the next one.
    const own = profile.filter((_, at) => isOf(at) || (at > 0 && isOf(at - 1)));
    return webBetween({ ...axial, profile: own }, hole) ?? Number.POSITIVE_INFINITY;
  });
  return names[gaps.indexOf(Math.min(...gaps))] ?? axial.feature;
}

/** An adapter that came out of several ways of holding the joint is one part, and is measured once. */
const known = new WeakMap<TurnedPart, readonly Named[]>();

function thinnest({ adapter }: Joint): readonly Named[] {
  const webs = known.get(adapter) ?? thinnestOf(adapter);
  known.set(adapter, webs);
  return webs;
}

/** The thinnest web of each kind, with the features at its ends. */
function thinnestOf(adapter: TurnedPart): Named[] {
  const features = new Map(adapter.features.map((feature) => [feature.id, feature]));
  const drillings = new Map(adapter.drillings.map((drilling) => [drilling.id, drilling]));
  const own = (end: Drilling | string) => (typeof end === 'string' ? null : (features.get(end.feature) ?? null));
  const kindOf = (a: Drilling, b: Drilling | 'outside' | 'flats'): WebCode | null => {
    const feature = own(a);
    if (a === b) return 'web-between-recesses';
    return feature && codeOf(feature, own(b), typeof b === 'string' ? b : b.id);
  };
  /** Bore and recesses are one drilling: the one of them that is meant is the one that the hole comes nearest to. */
  const featureOf = (id: string, other: string): Feature | null => {
    const [one, two] = [drillings.get(id), drillings.get(other)];
    const feature = one ? own(one) : null;
    const second = two ? own(two) : null;
    if (!one || !two || !feature || !second || one === two || !isAxial(feature) || isAxial(second)) return feature;
    return features.get(nearestStretch(one, two)) ?? feature;
  };
  return [...leastWebs(adapter, kindOf)].flatMap(([code, web]): Named[] => {
    const a = featureOf(web.a, web.b);
    return a ? [{ web, code, feature: drillings.get(web.a)?.feature ?? '', a, b: featureOf(web.b, web.a) }] : [];
  });
}

export const webs: Check = {
  id: 'webs',
  title: 'Metal between features',
  source: 'common practice',
  run(joint) {
    const limit = joint.job.adapter.web;
    return thinnest(joint).map((named) =>
      judged(
        {
          code: named.code,
          feature: named.feature,
          title: titles[named.code],
          unit: 'mm',
          why: whyOf(named, joint),
          cure: cureFor(named, joint, limit - named.web.gap),
          source: 'common practice, least web set by adapter.web',
        },
        named.web.gap,
        { limit, sense: 'at least' },
      ),
    );
  },
};
