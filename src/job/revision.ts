/** The mark by which a print, a cut part and a drawing are known to come from one and the same job. */
import type { Joint } from './joint.ts';

/** Letters and digits that a shop cannot misread: no I, L, O, U. */
const signs = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const length = 5;

/** 32 bits of a text. Source: the FNV-1a hash (public domain); no secret, only a mark. */
function hash(text: string, seed: number): number {
  let state = seed >>> 0;
  for (let i = 0; i < text.length; i++) {
    state ^= text.charCodeAt(i);
    state = Math.imul(state, 0x01000193) >>> 0;
  }
  return state;
}

/** Sizes to a nanometre: binary noise is no new revision. */
const tidy = (_key: string, value: unknown) => (typeof value === 'number' ? Number(value.toFixed(6)) : value);

/**
 * Revision of a joint: "R" and five signs, from everything that decides a part: the job (without its notes, what the shop has, and what
 * was measured on the finished parts) and the sizes that were worked out. The same job gives the same mark; a changed size another one,
 * but for one chance in 33 million.
 */
export function revisionOf({ job, adapterSpec, wheelSpec, screws }: Joint): string {
  const { built: _built, note: _note, print: _print, ...decides } = job;
  // The paper of a drawing and the tools of a bench are no part of what is made.
  const { drawing: _drawing, shop: _shop, ...adapter } = decides.adapter;
  const bought = screws.map(({ id, thread, length: long, class: grade, head, count }) => [
    id,
    thread,
    long,
    grade,
    head.kind,
    count,
  ]);
  // What a clearance that is left open comes to stands in the wheel's own bore; the mark is made as if it were the least of it.
  const { wheel } = decides;
  const named = wheel ? { wheel: { ...wheel, clearance: wheel.clearance === 'auto' ? 0.05 : wheel.clearance } } : {};
  const text = JSON.stringify([{ ...decides, adapter, ...named }, adapterSpec, wheelSpec, bought], tidy);
  const high = hash(text, 0x811c9dc5);
  const mixed = (high ^ (high >>> 15)) >>> 0;
  let mark = '';
  for (let i = 0; i < length; i++) mark += signs[(mixed >>> (5 * i)) & 31];
  return `R${mark}`;
}
