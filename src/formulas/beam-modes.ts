/**
 * Bending modes of a shaft by finite elements: pieces of constant section, masses fixed to it, ends on springs.
 *
 * Beam elements with cubic deflection and shear flexibility (Timoshenko stiffness with its consistent mass; Przemieniecki, Theory of
 * matrix structural analysis; memory for the mass terms, held against closed forms in the tests). Valid for: small deflections, slender
 * shafts, pieces in line. Left out: rotary inertia and gyroscopic couple, which raise the speed of synchronous whirl of a tube by about
 * (pi k/L)^2/2, k its radius of gyration (0.2 % at L = 17 D); damping; axial force. Units inside: mm, N, tonne, s.
 */
import { cos } from '../units/trig.ts';
import { backward, cholesky, dot, forward, type Matrix, symmetricEigen, times, zeros } from './small-matrices.ts';

/** A stretch of constant section. */
export interface BeamPiece {
  /** mm, > 0 */
  readonly length: number;
  /** Bending stiffness E I, N.mm2, > 0 */
  readonly bending: number;
  /** Shear stiffness kappa G A, N; left out: stiff in shear. */
  readonly shear?: number;
  /** Mass a length, g/mm, >= 0 */
  readonly mass: number;
}

/** How an end is held: a spring against moving sideways, N/mm, and one against tilting, N.mm/rad; 'held' moves not at all, 0 is free. */
export interface BeamEnd {
  readonly sideways: number | 'held';
  readonly tilt: number | 'held';
}

/** A mass fixed to the shaft, g, so far from the first end, mm. It moves sideways only; its own inertia against tilting is left out. */
export interface BeamMass {
  readonly at: number;
  readonly mass: number;
}

export interface Beam {
  readonly pieces: readonly BeamPiece[];
  readonly ends: readonly [BeamEnd, BeamEnd];
  readonly masses?: readonly BeamMass[];
}

export interface BeamMode {
  /** Hz */
  readonly frequency: number;
  /** Deflection along the shaft, largest 1. */
  readonly shape: readonly { readonly at: number; readonly deflection: number }[];
}

/** End that a joint's cross makes: cannot move sideways, tilts freely. */
export const pinned: BeamEnd = { sideways: 'held', tilt: 0 };
export const clamped: BeamEnd = { sideways: 'held', tilt: 'held' };
export const freeEnd: BeamEnd = { sideways: 0, tilt: 0 };

/** Elements over the whole shaft: the first three modes of a plain tube then come within 0.01 % of the closed form. */
const usualElements = 24;

/** Places nearer than this share of the length share a node: very short elements drown the digits of the long ones. */
const together = 1e-3;

interface Meshed {
  readonly stiffness: Matrix;
  readonly mass: Matrix;
  /** Place of each node, mm. */
  readonly nodes: readonly number[];
}

/**
 * The lowest `count` modes, lowest first.
 * @throws RangeError when nothing holds the shaft, or a size is out of range
 */
export function beamModes(beam: Beam, count: number, elements = usualElements): BeamMode[] {
  const { stiffness, mass, nodes } = meshed(beam, elements);
  const held = beam.ends.flatMap(({ sideways, tilt }, end) => {
    const first = end === 0 ? 0 : 2 * (nodes.length - 1);
    return [...(sideways === 'held' ? [first] : []), ...(tilt === 'held' ? [first + 1] : [])];
  });
  const open = stiffness.map((_, i) => i).filter((i) => !held.includes(i));
  const pick = (matrix: Matrix): Matrix => open.map((i) => open.map((j) => matrix[i]?.[j] as number));
  return lowest(pick(stiffness), pick(mass), count).map(({ square, vector }) => {
    const whole = new Array<number>(stiffness.length).fill(0);
    open.forEach((i, k) => {
      whole[i] = vector[k] as number;
    });
    const deflections = nodes.map((_, i) => whole[2 * i] as number);
    const largest = deflections.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
    return {
      frequency: Math.sqrt(square) / (2 * Math.PI),
      shape: nodes.map((at, i) => ({ at, deflection: (deflections[i] as number) / largest })),
    };
  });
}

/** Nodes at every joint of pieces and every mass, and evenly between them. */
function meshed({ pieces, ends, masses = [] }: Beam, elements: number): Meshed {
  if (pieces.length === 0 || pieces.some(({ length, bending, mass }) => !(length > 0 && bending > 0 && mass >= 0)))
    throw new RangeError('A shaft is made of pieces with a length and a bending stiffness.');
  const total = pieces.reduce((sum, { length }) => sum + length, 0);
  if (masses.some(({ at, mass }) => !(at >= 0 && at <= total && mass >= 0)))
    throw new RangeError('A mass sits on the shaft.');
  const nodes = [0];
  const sections: BeamPiece[] = [];
  let start = 0;
  for (const piece of pieces) {
    const end = start + piece.length;
    const near = total * together;
    const inside = masses.map(({ at }) => at).filter((at) => at > start + near && at < end - near);
    const stops = [...inside.sort((a, b) => a - b), end].filter(
      (at, i, all) => i === 0 || at === end || at - (all[i - 1] as number) > near,
    );
    let from = start;
    for (const to of stops) {
      const parts = Math.max(1, Math.round((elements * (to - from)) / total));
      for (let i = 1; i <= parts; i++) {
        nodes.push(from + ((to - from) * i) / parts);
        sections.push(piece);
      }
      from = to;
    }
    start = end;
  }
  const stiffness = zeros(2 * nodes.length);
  const mass = zeros(2 * nodes.length);
  const add = (matrix: Matrix, i: number, j: number, value: number): void => {
    const row = matrix[i] as number[];
    row[j] = (row[j] as number) + value;
  };
  sections.forEach((piece, e) => {
    const length = (nodes[e + 1] as number) - (nodes[e] as number);
    const own = element(piece, length);
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        add(stiffness, 2 * e + i, 2 * e + j, own.stiffness[i]?.[j] as number);
        add(mass, 2 * e + i, 2 * e + j, own.mass[i]?.[j] as number);
      }
  });
  ends.forEach(({ sideways, tilt }, end) => {
    const first = end === 0 ? 0 : 2 * (nodes.length - 1);
    if (sideways !== 'held') add(stiffness, first, first, sideways);
    if (tilt !== 'held') add(stiffness, first + 1, first + 1, tilt);
  });
  for (const { at, mass: grams } of masses) {
    const node = nodes.reduce(
      (best, place, i) => (Math.abs(place - at) < Math.abs((nodes[best] as number) - at) ? i : best),
      0,
    );
    add(mass, 2 * node, 2 * node, grams / 1e6);
  }
  return { stiffness, mass, nodes };
}

/** Stiffness and mass of one element, for deflection and slope at its two nodes. */
function element({ bending, shear, mass }: BeamPiece, h: number): { stiffness: Matrix; mass: Matrix } {
  // Shear flexibility against bending flexibility of the element.
  const s = shear === undefined ? 0 : (12 * bending) / (shear * h * h);
  const k = bending / ((1 + s) * h ** 3);
  const near = (4 + s) * h * h;
  const far = (2 - s) * h * h;
  const stiffness = [
    [12, 6 * h, -12, 6 * h],
    [6 * h, near, -6 * h, far],
    [-12, -6 * h, 12, -6 * h],
    [6 * h, far, -6 * h, near],
  ].map((row) => row.map((value) => value * k));
  const m = ((mass / 1e6) * h) / (1 + s) ** 2;
  const a = 13 / 35 + (7 * s) / 10 + (s * s) / 3;
  const b = (11 / 210 + (11 * s) / 120 + (s * s) / 24) * h;
  const c = 9 / 70 + (3 * s) / 10 + (s * s) / 6;
  const d = (13 / 420 + (3 * s) / 40 + (s * s) / 24) * h;
  const e = (1 / 105 + s / 60 + (s * s) / 120) * h * h;
  const f = (1 / 140 + s / 60 + (s * s) / 120) * h * h;
  const inertia = [
    [a, b, c, -d],
    [b, e, d, -f],
    [c, d, a, -b],
    [-d, -f, -b, e],
  ].map((row) => row.map((value) => value * m));
  return { stiffness, mass: inertia };
}

interface Lowest {
  /** Circular frequency squared, 1/s2. */
  readonly square: number;
  readonly vector: readonly number[];
}

/** Vectors iterated beyond those wanted, and rounds; the textbook's subspace iteration stops by itself long before. */
const spare = 4;
const mostRounds = 60;

/** Elements share deflection and slope of one node only: no unknown meets another that is further from it than this. */
const reach = 3;

/** Lowest modes of K x = w2 M x by subspace iteration (Bathe), each round settled by Rayleigh and Ritz. */
function lowest(stiffness: Matrix, mass: Matrix, count: number): Lowest[] {
  const size = stiffness.length;
  const factor = cholesky(stiffness, reach);
  const width = Math.min(size, count + spare);
  // Any start that leans on no mode: chords of different pitch over the unknowns.
  let vectors = Array.from({ length: width }, (_, k) =>
    Array.from({ length: size }, (_, i) => cos((Math.PI * (k + 0.5) * (i + 0.5)) / size) + 0.1 / (1 + i + k)),
  );
  let squares: number[] = [];
  for (let round = 0; round < mostRounds; round++) {
    const next = orthogonal(
      vectors.map((vector) => backward(factor, forward(factor, times(mass, vector, reach), reach), reach)),
      mass,
    );
    const pressed = next.map((vector) => times(stiffness, vector, reach));
    const small = next.map((a) => pressed.map((b) => dot(a, b)));
    const settled = symmetricEigen(small).reverse();
    vectors = settled.map(({ vector }) => mixed(next, vector));
    const before = squares;
    squares = settled.slice(0, count).map(({ value }) => value);
    if (
      before.length > 0 &&
      squares.every((value, k) => Math.abs(value - (before[k] as number)) <= 1e-9 * Math.abs(value))
    )
      break;
  }
  return squares.map((square, k) => ({ square, vector: vectors[k] as number[] }));
}

/** Sum of the lines, each so many times. */
function mixed(lines: readonly (readonly number[])[], shares: readonly number[]): number[] {
  const size = lines[0]?.length ?? 0;
  const sum = new Array<number>(size).fill(0);
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as readonly number[];
    const share = shares[k] as number;
    for (let i = 0; i < size; i++) sum[i] = (sum[i] as number) + (line[i] as number) * share;
  }
  return sum;
}

/** The same vectors made orthogonal and of size 1 in the mass; what has no mass of its own drops out. */
function orthogonal(vectors: readonly (readonly number[])[], mass: Matrix): number[][] {
  const done: { vector: number[]; pressed: number[] }[] = [];
  for (const start of vectors) {
    const vector = [...start];
    // Twice, for what the first pass leaves by rounding.
    for (let pass = 0; pass < 2; pass++)
      for (const { vector: other, pressed } of done) {
        const share = dot(vector, pressed);
        for (let i = 0; i < vector.length; i++) vector[i] = (vector[i] as number) - share * (other[i] as number);
      }
    const before = dot(start, times(mass, start, reach));
    const size = dot(vector, times(mass, vector, reach));
    if (!(size > 1e-24 * before)) continue;
    const unit = vector.map((value) => value / Math.sqrt(size));
    done.push({ vector: unit, pressed: times(mass, unit, reach) });
  }
  return done.map(({ vector }) => vector);
}
