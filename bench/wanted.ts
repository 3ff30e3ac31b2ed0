/** What was wanted of the speed, whether this run meets it, and why not where it does not. */
import type { Cost } from './cold.ts';
import type { JudgingRow } from './judging.ts';
import type { MeshRow } from './meshes.ts';

export interface Measured {
  /** Names of the makers, ours first. */
  readonly makers: readonly string[];
  readonly meshes: readonly MeshRow[];
  readonly judging: readonly JudgingRow[];
  readonly costs: readonly Cost[];
}

interface Wanted {
  readonly what: string;
  readonly limit: number;
  /** At least for a gain, at most for a cost. */
  readonly sense: 'at least' | 'at most';
  readonly unit: string;
  readonly value: number;
  /** Where the worst of several was met. */
  readonly where: string;
  /** Said where it is missed. */
  readonly whyNot: string;
}

interface At {
  readonly value: number;
  readonly where: string;
}

/** How many times longer a peer takes, where it does so least. */
function leastGain(peer: string, { makers, meshes }: Measured): At {
  const own = makers[0] ?? '';
  const found = meshes.flatMap(({ part, ms }) => {
    const [mine, theirs] = [ms.get(own), ms.get(peer)];
    return typeof mine === 'number' && typeof theirs === 'number' ? [{ value: theirs / mine, where: part }] : [];
  });
  return found.reduce((a, b) => (b.value < a.value ? b : a), { value: Number.POSITIVE_INFINITY, where: '' });
}

/** How much faster the time grows than the number of holes or teeth, where it does so most; 1 is linear. */
function steepest({ makers, meshes }: Measured): At {
  const own = makers[0] ?? '';
  const first = new Map<string, { size: number; ms: number }>();
  let worst: At = { value: 0, where: '' };
  for (const { part, ms } of meshes) {
    const [kind = '', count = ''] = part.split(', ');
    const [size, mine] = [Number.parseInt(count, 10), ms.get(own)];
    if (typeof mine !== 'number') continue;
    const start = first.get(kind);
    if (!start) first.set(kind, { size, ms: mine });
    else if (mine / start.ms / (size / start.size) > worst.value)
      worst = { value: mine / start.ms / (size / start.size), where: part };
  }
  return worst;
}

function wantedOf(measured: Measured): Wanted[] {
  const { judging, costs } = measured;
  const maker = (start: string) => measured.makers.find((name) => name.startsWith(start)) ?? '';
  const judged = (start: string) => judging.find(({ what }) => what.startsWith(start))?.ms ?? Number.NaN;
  const cost = (what: string) => costs.find((row) => row.what === what);
  const [modeller, step, plain] = [
    cost('load the exact modeller, first build'),
    cost('make --only step'),
    cost('make, everything that is made unasked'),
  ];
  return [
    {
      what: "mesh, beside manifold-3d's booleans",
      limit: 10,
      sense: 'at least',
      unit: 'times faster',
      ...leastGain(maker('manifold'), measured),
      whyNot: '',
    },
    {
      what: "mesh, beside OpenCascade's build and mesh",
      limit: 100,
      sense: 'at least',
      unit: 'times faster',
      ...leastGain(maker('OpenCascade'), measured),
      whyNot:
        'A wheel of ten teeth is a small thing for it too: it takes half a dozen faces where ours is at its own fixed cost. Large wheels are past the limit.',
    },
    {
      what: 'mesh, time over size (1: linear)',
      limit: 1.5,
      sense: 'at most',
      unit: 'times steeper',
      ...steepest(measured),
      whyNot:
        'A face with many holes is cut into triangles by a method whose time grows a little faster than its holes.',
    },
    {
      what: 'all checks of a job, warm',
      limit: 1,
      sense: 'at most',
      unit: 'ms',
      value: judged('all checks, a new joint'),
      where: '',
      whyNot:
        'Half is the signal that the sensor gives, tooth by tooth, and ten thousand throws of chance; the rest is exact gaps between outlines, mass and balance of every part, and forty other checks, each with its sentences. None is left out to be quick: without the first two it is told a line above.',
    },
    {
      what: 'make of the whole package without STEP, cold, on the wall',
      limit: 500,
      sense: 'at most',
      unit: 'ms',
      value: plain?.ms ?? Number.NaN,
      where: '',
      whyNot:
        'Node and its packages alone take a good part of it; a cold process then judges a few dozen ways with code that was never run before, which is many times slower than the same code warm.',
    },
    {
      what: "make of STEP, beside the modeller's own load and first build",
      limit: 2,
      sense: 'at most',
      unit: 'times',
      value: step && modeller ? step.cpu / modeller.cpu : Number.NaN,
      where: '',
      whyNot:
        "The modeller's own code is translated while it first runs, and two cylinders, which is what it is held against, hardly wake it: what is cut out of a real adapter takes most of the time, then writing the text, then judging the job.",
    },
  ];
}

/** Rows of the table: what, wanted, measured, met, why not. */
export const wantedRows = (measured: Measured): string[][] =>
  wantedOf(measured).map(({ what, limit, sense, unit, value, where, whyNot }) => {
    const isMet = sense === 'at least' ? value >= limit : value <= limit;
    const shown = `${Number(value.toPrecision(2))} ${unit}${where === '' ? '' : ` (${where})`}`;
    return [what, `${sense} ${limit} ${unit}`, shown, isMet ? 'yes' : 'no', isMet ? '' : whyNot];
  });
