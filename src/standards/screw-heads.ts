import { cos } from '../units/trig.ts';
import { buttonScrews, inchButtonScrews } from './button-screws.ts';
import { countersunkScrews, inchCountersunkScrews } from './countersunk-screws.ts';
import type { Designation } from './designation.ts';
import { readDesignation } from './designation.ts';
import { hexScrews, inchHexScrews } from './hex-screws.ts';
import { inchesToMm } from './inch.ts';
import { inchSocketCapScrews, socketCapScrews } from './socket-cap-screws.ts';
import type { Lookup } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** The four heads that an adapter uses. */
export type HeadKind = 'socket' | 'flat' | 'button' | 'hex';

/** Every head kind, for schemas and lists. */
export const headKinds: readonly HeadKind[] = ['socket', 'flat', 'button', 'hex'];

/** A screw head, mm and degrees. */
export interface ScrewHead {
  readonly kind: HeadKind;
  readonly size: string;
  /** Nominal thread diameter. */
  readonly d: number;
  /**
   * Largest diameter the head needs: knurled head (socket), sharp cone (flat), dome (button), across corners (hex).
   */
  readonly dk: number;
  /** Largest head height. A flat head lies inside the part: its height counts as screw length. */
  readonly k: number;
  /** Key or spanner size. */
  readonly s?: number;
  /** Least diameter of the bearing face, where a standard prints it. */
  readonly dw?: number;
  /** Cone angle of a flat head. */
  readonly coneAngle?: number;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * The head of a screw: kind 'socket' (ISO 4762), 'flat' (ISO 10642), 'button' (ISO 7380-1) or 'hex' (ISO 4014/4017),
 * inch sizes by ASME B18.3 and B18.2.1. Takes a size ('M10', '3/8') or any thread designation. A miss lists the sizes.
 */
export function screwHead(kind: HeadKind, sizeOrThread: string): Lookup<ScrewHead> {
  return andThen(readDesignation(sizeOrThread), (read) => {
    if (read.system === 'metric') return metricHead(kind, read);
    return inchHead(kind, read);
  });
}

function metricHead(kind: HeadKind, { size }: Designation): Lookup<ScrewHead> {
  switch (kind) {
    case 'socket':
      return andThen(lookUp(socketCapScrews, 'size', size), (row) => {
        const { d, k, s, dw } = row;
        // Second-choice sizes print no knurled head: add the largest step of the others, 0.4 mm.
        const dk = row.dkKnurled ?? row.dk + 0.4;
        return found({
          kind,
          size,
          d,
          dk,
          k,
          s,
          dw,
          source: socketCapScrews.edition,
          memory: row.dkKnurled === undefined,
        });
      });
    case 'flat':
      return andThen(lookUp(countersunkScrews, 'size', size), ({ d, dk, k, s, memory = false }) =>
        found({ kind, size, d, dk, k, s, coneAngle: 90, source: countersunkScrews.edition, memory }),
      );
    case 'button':
      return andThen(lookUp(buttonScrews, 'size', size), ({ d, dk, k, s, memory = false }) =>
        found({ kind, size, d, dk, k, s, source: buttonScrews.edition, memory }),
      );
    case 'hex':
      return andThen(lookUp(hexScrews, 'size', size), ({ d, k, s, dw, memory = false }) =>
        found({ kind, size, d, dk: acrossCorners(s), k, s, dw, source: hexScrews.edition, memory }),
      );
  }
}

function inchHead(kind: HeadKind, { size, d }: Designation): Lookup<ScrewHead> {
  switch (kind) {
    case 'socket':
      return andThen(lookUp(inchSocketCapScrews, 'size', size), ({ A, H, J, memory = false }) =>
        found({ kind, size, d, ...mm({ dk: A, k: H, s: J }), source: inchSocketCapScrews.edition, memory }),
      );
    case 'flat':
      return andThen(lookUp(inchCountersunkScrews, 'size', size), ({ A, H, J, memory = false }) =>
        found({
          kind,
          size,
          d,
          ...mm({ dk: A, k: H, s: J }),
          coneAngle: 82,
          source: inchCountersunkScrews.edition,
          memory,
        }),
      );
    case 'button':
      return andThen(lookUp(inchButtonScrews, 'size', size), ({ A, H, memory = false }) =>
        found({ kind, size, d, dk: inchesToMm(A), k: inchesToMm(H), source: inchButtonScrews.edition, memory }),
      );
    case 'hex':
      return andThen(lookUp(inchHexScrews, 'size', size), ({ F, G, H, memory = false }) =>
        found({ kind, size, d, ...mm({ dk: G, k: H, s: F }), source: inchHexScrews.edition, memory }),
      );
  }
}

function mm(inches: { dk: number; k: number; s: number }): { dk: number; k: number; s: number } {
  return { dk: inchesToMm(inches.dk), k: inchesToMm(inches.k), s: inchesToMm(inches.s) };
}

/** Across corners of a full hexagon, the most it can be; real corners are a little rounded. */
function acrossCorners(s: number): number {
  return s / cos(Math.PI / 6);
}
