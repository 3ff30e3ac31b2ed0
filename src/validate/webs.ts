/** Metal left between features, at every depth. */
import { allWebs, type Web } from '../geometry/webs.ts';
import type { Joint } from '../job/joint.ts';
import type { Feature } from '../model/part.ts';
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

/** Which finding a pair belongs to, by what the two features are for. */
function codeOf(a: Feature, b: Feature | 'outside' | 'flats'): string {
  if (b === 'outside') return a.purpose === 'bore' || a.purpose === 'recess' ? 'wall-bore-to-outside' : 'wall-to-rim';
  if (b === 'flats') return 'wall-to-flats';
  const axial = (f: Feature) => f.purpose === 'bore' || f.purpose === 'recess';
  if (axial(a) && axial(b)) return 'web-between-recesses';
  if (axial(a) || axial(b)) return 'wall-to-bore';
  return 'web-between-holes';
}

const titles: Readonly<Record<string, string>> = {
  'web-between-holes': 'web between holes',
  'wall-to-bore': 'wall between holes and the bore or recess',
  'wall-to-rim': 'wall between holes and the rim, steps and far face',
  'wall-to-flats': 'wall between holes and the vise flats',
  'wall-bore-to-outside': 'wall between the bore and the outside',
  'web-between-recesses': 'web between the two recesses',
};

const cures: Readonly<Record<string, string>> = {
  'wall-to-bore': 'Make the bore or the register smaller, or use smaller heads.',
  'wall-to-rim': 'Make the outside larger, the heads smaller, or the holes shallower.',
  'wall-to-flats': 'Set the flats further apart, or leave them out.',
  'wall-bore-to-outside': 'Make the bore smaller.',
  'web-between-recesses': 'Make the adapter thicker.',
};

/** Turning the pattern only helps when some angle is good enough. */
function cureForHoles({ clocking, job }: Joint): string {
  const { best } = clocking;
  return best.web !== null && best.web < job.adapter.web
    ? `No angle leaves enough metal (best ${mm(best.web)}): use smaller heads or screws, or fasten one side another way.`
    : `Set clocking: auto (${best.angle.toFixed(3)} degrees), use smaller heads, or move the wheel's screws.`;
}

function worstOf(webs: readonly Web[], codes: ReadonlyMap<Web, string>): Map<string, Web> {
  const worst = new Map<string, Web>();
  for (const web of webs) {
    const code = codes.get(web) as string;
    const known = worst.get(code);
    if (!known || web.gap < known.gap) worst.set(code, web);
  }
  return worst;
}

/** Plain name of a drilling: its feature's label and its number in the group. */
function nameOf(joint: Joint, id: string): string {
  if (id === 'outside' || id === 'flats') return id === 'outside' ? 'the outside' : 'the flats';
  const drilling = joint.adapter.drillings.find((d) => d.id === id);
  const feature = joint.adapter.features.find((f) => f.id === drilling?.feature);
  const number = /-(\d+)$/.exec(id)?.[1];
  return number && feature?.group ? `${feature.side} hole ${number}` : (feature?.label ?? id);
}

export const webs: Check = {
  id: 'webs',
  title: 'Metal between features',
  source: 'common practice',
  run(joint) {
    const limit = joint.job.adapter.web;
    const { adapter } = joint;
    const featureOf = (id: string) => {
      const drilling = adapter.drillings.find((d) => d.id === id);
      return adapter.features.find((f) => f.id === drilling?.feature) as Feature;
    };
    const all = allWebs(adapter);
    const codes = new Map(
      all.map((web) => [web, codeOf(featureOf(web.a), web.b === 'outside' || web.b === 'flats' ? web.b : featureOf(web.b))]),
    );
    return [...worstOf(all, codes)].map(([code, web]) =>
      judged(
        {
          code,
          feature: featureOf(web.a).id,
          title: titles[code] as string,
          unit: 'mm',
          why:
            web.gap < 0
              ? `${nameOf(joint, web.a)} and ${nameOf(joint, web.b)} run ${mm(-web.gap)} into each other.`
              : `Thinnest metal, at any depth, lies between ${nameOf(joint, web.a)} and ${nameOf(joint, web.b)}.`,
          cure: code === 'web-between-holes' ? cureForHoles(joint) : (cures[code] as string),
          source: 'common practice, least web set by adapter.web',
        },
        web.gap,
        { limit, sense: 'at least' },
      ),
    );
  },
};
