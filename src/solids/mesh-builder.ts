/** Collects shared vertices and triangles while a mesh is being built. */
import type { Mesh } from '../model/mesh.ts';

/**
 * A closed outline at one height as vertex numbers, counter-clockwise seen from +z, in consecutive sections
 * that share their end vertices. `at` orders the vertices of a section; sections of two rings of one curve
 * correspond.
 */
export interface Ring {
  readonly sections: readonly RingSection[];
}

export interface RingSection {
  readonly ids: readonly number[];
  readonly at: readonly number[];
}

export class MeshBuilder {
  readonly xyz: number[] = [];
  readonly triangles: number[] = [];

  /** Number of a new vertex. */
  vertex(x: number, y: number, z: number): number {
    // Adding zero turns -0 into 0, so that equal meshes are equal byte for byte.
    this.xyz.push(x + 0, y + 0, z + 0);
    return this.xyz.length / 3 - 1;
  }

  triangle(a: number, b: number, c: number): void {
    if (a !== b && b !== c && c !== a) this.triangles.push(a, b, c);
  }

  /** Wall between two rings of one curve; it faces outward, or inward towards the axis of a hole. */
  wall(lower: Ring, upper: Ring, facing: 'out' | 'in'): void {
    for (const [k, low] of lower.sections.entries()) {
      const high = upper.sections[k];
      if (!high) throw new Error('rings of one curve have different sections');
      this.zip(low, high, facing === 'out');
    }
  }

  private zip(low: RingSection, high: RingSection, outward: boolean): void {
    let i = 0;
    let j = 0;
    const lastLow = low.ids.length - 1;
    const lastHigh = high.ids.length - 1;
    while (i < lastLow || j < lastHigh) {
      const a = low.ids[i] as number;
      const b = high.ids[j] as number;
      const stepLow = j === lastHigh || (i < lastLow && (low.at[i + 1] as number) <= (high.at[j + 1] as number));
      const c = (stepLow ? low.ids[++i] : high.ids[++j]) as number;
      if (outward) this.triangle(a, c, b);
      else this.triangle(a, b, c);
    }
  }

  build(): Mesh {
    return { positions: Float64Array.from(this.xyz), triangles: Uint32Array.from(this.triangles) };
  }
}

/** Vertex numbers once round a ring. */
export function loopOf(ring: Ring): number[] {
  const loop: number[] = [];
  for (const section of ring.sections) {
    for (const id of section.ids) {
      if (loop.at(-1) !== id) loop.push(id);
    }
  }
  if (loop.length > 1 && loop.at(-1) === loop[0]) loop.pop();
  return loop;
}
