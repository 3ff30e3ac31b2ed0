/** How one side is held: the screw, its head and seat, the hole it needs. Everything that does not hang on the thickness. */

import type { Fastening } from '../job/joint.ts';
import { materialOfFlange, type ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import type { HoleShape } from '../parts/adapter-spec.ts';
import { clearanceHole } from '../standards/clearance-holes.ts';
import { counterboreFor } from '../standards/counterbores.ts';
import { countersinkFor } from '../standards/countersinks.ts';
import { type HexNut, nutFor } from '../standards/hex-nuts.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { type HeadKind, type ScrewHead, screwHead } from '../standards/screw-heads.ts';
import type { Lookup } from '../standards/table.ts';
import { type LeastEngagement, leastEngagement } from '../standards/thread-engagement.ts';
import { findThread, type Thread } from '../standards/threads.ts';
import { type Washer, washerFor } from '../standards/washers.ts';
import { hypot } from '../units/hypot.ts';
import { tan } from '../units/trig.ts';
import { screwForHole } from './pick-screw.ts';
import type { Seat } from './pressed-seats.ts';
import { type Designed, designed, type Trouble, trouble } from './trouble.ts';

export type PropertyClass = '8.8' | '10.9' | '12.9';
type Pocket = Extract<HoleShape, { kind: 'passing' }>['head'];

/** A side's screws, before any length is known. */
export interface Fixing {
  readonly side: 'driving' | 'driven';
  readonly fastening: Fastening;
  readonly thread: Thread;
  readonly class: PropertyClass;
  readonly head: ScrewHead;
  /** sunk: in a pocket in the adapter's far face; surface: on that face; outside: behind the flange. */
  readonly seat: 'sunk' | 'surface' | 'outside';
  readonly pocket: Pocket;
  readonly clearance: number;
  readonly washer: Washer | null;
  readonly nut: HexNut | null;
  /** What heads and nuts bear on. */
  readonly seats: readonly Seat[];
  /** What holds the thread; null for a nut. */
  readonly parent: Material | null;
  /** Holes that heads and nuts bear round, mm: as measured in a flange, as drilled in the adapter, or a washer's. */
  readonly bearingHoles: { readonly head: number; readonly nut: number | null };
  /** Friction in thread and under the head; null when the job does not say. */
  readonly friction: number | null;
  /** Engagement needed in whatever holds the thread. */
  readonly engagement: LeastEngagement;
  /** What holds the thread. */
  readonly threadIn: 'flange' | 'adapter' | 'nut';
  /** Screw length asked for, mm. */
  readonly length: number | null;
  /** Bolts that run through both flanges at once (the two patterns are one). */
  readonly shared: boolean;
}

/** Everything a fixing is chosen from. */
export interface FixingInput {
  readonly flange: ResolvedFlange;
  readonly other: ResolvedFlange;
  readonly job: JobInput;
  readonly adapterMaterial: Material;
  readonly flangeMaterial: Material;
  /** True when both sides are through-bolted on one and the same pattern. */
  readonly shared: boolean;
}

/** The way of fastening that a side gets: asked for, or the one its holes suggest. */
export function fasteningOf(flange: ResolvedFlange, job: JobInput): Fastening {
  const asked = job.adapter[flange.side].fastening;
  return asked !== 'auto' ? asked : flange.holes.kind === 'tapped' ? 'into_flange' : 'into_adapter';
}

function pickThread(input: FixingInput, fastening: Fastening): Designed<Thread> {
  const { flange, other, job, shared } = input;
  const { side, holes } = flange;
  const asked = job.adapter[side].screw;
  if (fastening === 'into_flange') {
    if (holes.kind !== 'tapped' || holes.thread === null) {
      return trouble(
        `adapter.${side}.fastening`,
        `into_flange needs tapped holes, but the ${side} flange has clear holes of ${holes.diameter.value} mm. Use into_adapter or through, or give ${side}.holes.thread.`,
      );
    }
    const own = findThread(holes.thread);
    if (!own.ok) return trouble(`${side}.holes.thread`, own.why);
    if (asked !== 'auto') {
      const wanted = findThread(asked);
      if (!wanted.ok) return trouble(`adapter.${side}.screw`, wanted.why);
      if (wanted.value.designation !== own.value.designation) {
        return trouble(
          `adapter.${side}.screw`,
          `The ${side} flange is tapped ${own.value.designation}, so a ${wanted.value.designation} screw does not go in. Leave screw on auto.`,
        );
      }
    }
    return designed(own.value);
  }
  if (holes.kind === 'tapped') {
    return trouble(
      `adapter.${side}.fastening`,
      `${fastening} needs clear holes, but the ${side} flange is tapped ${holes.thread}. Use into_flange.`,
    );
  }
  const hole = shared ? Math.min(holes.diameter.value, other.holes.diameter.value) : holes.diameter.value;
  if (asked === 'auto') {
    const picked = screwForHole(hole);
    return picked
      ? designed(picked)
      : trouble(`${side}.holes.diameter`, `No tabled screw goes through a ${hole} mm hole.`);
  }
  const wanted = findThread(asked);
  if (!wanted.ok) return trouble(`adapter.${side}.screw`, wanted.why);
  if (wanted.value.d > hole) {
    const usual = screwForHole(hole);
    return trouble(
      `adapter.${side}.screw`,
      `${asked} does not go through ${shared ? 'the smaller' : `the ${side} flange's`} holes of ${hole} mm.${usual ? ` The thickest that does is ${usual.designation}.` : ''}`,
    );
  }
  return designed(wanted.value);
}

/** Room between heads on a face and the rim of the flange that lies on it, mm. Common practice. */
const roomBesideFlange = 1;

/** True where the other flange lies over heads or washers of this diameter, so that they must be sunk. */
function isCovered(flange: ResolvedFlange, other: ResolvedFlange, diameter: number): boolean {
  const nearest = Math.min(...flange.holes.positions.map(({ x, y }) => hypot(x, y)));
  return other.outside.value / 2 > nearest - diameter / 2 - roomBesideFlange;
}

function pocketFor(kind: HeadKind, thread: Thread, washer: Washer | null): Lookup<Pocket> {
  if (kind === 'flat') {
    const sink = countersinkFor(thread.size);
    return sink.ok
      ? { ok: true, value: { kind: 'countersink', diameter: sink.value.diameter, angle: sink.value.angle } }
      : sink;
  }
  const bored = counterboreFor(thread.size);
  if (!bored.ok) return bored;
  const { diameter, depth, washerDiameter } = bored.value;
  if (!washer) return { ok: true, value: { kind: 'counterbore', diameter, depth } };
  return {
    ok: true,
    value: { kind: 'counterbore', diameter: washerDiameter ?? washer.outside + 1, depth: depth + washer.thickness },
  };
}

/** Heads that cannot be seated where the job wants them. */
function headTroubles(
  wish: JobInput['adapter']['driving'],
  side: string,
  kind: HeadKind,
  headsOutside: boolean,
): Trouble[] {
  const troubles: Trouble[] = [];
  const say = (key: string, message: string) => troubles.push({ path: `adapter.${side}.${key}`, message });
  if (kind === 'flat') {
    if (headsOutside) say('head', `A flat head would need a countersunk ${side} flange. Use socket, button or hex.`);
    else if (wish.seat === 'surface')
      say('seat', 'A flat head is always sunk. Use seat: sunk, or a socket, button or hex head.');
    if (wish.washer) say('washer', 'A flat head takes no washer. Use washer: false, or a socket head.');
  }
  if (headsOutside && wish.seat !== 'auto')
    say('seat', `These heads sit behind the ${side} flange, not in the adapter. Leave seat on auto.`);
  return troubles;
}

/** A nut carries its own thread: nothing has to be cut. */
const inNut: LeastEngagement = { length: 0, factor: 0, row: 'its nut', source: 'nut of the same class', memory: false };

/** What lies under a side's heads and nuts. Bolts through both flanges go in from behind the driven one. */
function seatsOf(
  input: FixingInput,
  outside: boolean,
  drilled: number,
  washer: Washer | null,
  hasNut: boolean,
): Seat[] {
  const { flange, other, shared, adapterMaterial, flangeMaterial } = input;
  const of = ({ side, holes }: ResolvedFlange, material: Material) => ({
    part: `${side} flange`,
    material,
    hole: holes.diameter.value,
    washer,
    holes,
  });
  const own = of(flange, flangeMaterial);
  const far = findMaterial(materialOfFlange(other));
  const farSeat = far.ok ? [of(other, far.value)] : [];
  const adapter = { part: 'adapter', material: adapterMaterial, hole: drilled, washer };
  const [driving, driven] = flange.side === 'driving' ? [[own], farSeat] : [farSeat, [own]];
  const heads = shared ? driven : [outside ? own : adapter];
  const nuts = hasNut ? (shared ? driving : [own]) : [];
  return [
    ...heads.map((seat) => ({ under: 'head' as const, ...seat })),
    ...nuts.map((seat) => ({ under: 'nut' as const, ...seat })),
  ];
}

/** Holes that heads and nuts bear round. Bolts through both flanges go in from behind the driven one. */
function bearingHoles(
  { flange, other, shared }: FixingInput,
  outside: boolean,
  drilled: number,
  washer: Washer | null,
  nut: HexNut | null,
): Fixing['bearingHoles'] {
  if (washer) return { head: washer.hole, nut: nut ? washer.hole : null };
  const driven = flange.side === 'driven' ? flange : other;
  const driving = flange.side === 'driven' ? other : flange;
  const head = shared ? driven.holes.diameter.value : outside ? flange.holes.diameter.value : drilled;
  return { head, nut: nut ? (shared ? driving : flange).holes.diameter.value : null };
}

/** Choose a side's screws and holes. */
export function fixingFor(input: FixingInput): Designed<Fixing> {
  const { flange, other, job, shared } = input;
  const { side } = flange;
  const wish = job.adapter[side];
  const fastening = fasteningOf(flange, job);
  const picked = pickThread(input, fastening);
  if (!picked.ok) return picked;
  const thread = picked.value;

  const headsOutside = fastening === 'into_adapter' || shared;
  const kind: HeadKind = wish.head !== 'auto' ? wish.head : headsOutside ? 'hex' : 'socket';
  const path = `adapter.${side}`;
  const troubles: Trouble[] = [];
  const need = <T>(lookup: Lookup<T>, key: string): T | null => {
    if (lookup.ok) return lookup.value;
    troubles.push({ path: `${path}.${key}`, message: lookup.why });
    return null;
  };

  const head = need(screwHead(kind, thread.size), 'head');
  const clearance = need(clearanceHole(thread.size, wish.hole), 'hole');
  const washer = wish.washer ? need(washerFor(thread.size), 'washer') : null;
  const nut = fastening === 'through' ? need(nutFor(thread.size), 'screw') : null;
  const parent = fastening === 'into_flange' ? input.flangeMaterial : input.adapterMaterial;
  const engagement = fastening === 'through' ? inNut : need(leastEngagement(thread, parent, wish.class), 'class');
  if (!head || !clearance || !engagement || troubles.length > 0) return { ok: false, troubles };

  troubles.push(...headTroubles(wish, side, kind, headsOutside));
  const covered = kind === 'flat' || isCovered(flange, other, Math.max(head.dk, washer?.outside ?? 0));
  const seat = headsOutside ? 'outside' : wish.seat !== 'auto' ? wish.seat : covered ? 'sunk' : 'surface';
  if (seat === 'sunk' && (kind === 'hex' || kind === 'button')) {
    troubles.push({
      path: `${path}.head`,
      message: `A ${kind} head cannot be sunk: there is no standard pocket for it. Use socket (counterbore) or flat (countersink).`,
    });
  }
  const pocket: Pocket | null = seat === 'sunk' ? need(pocketFor(kind, thread, washer), 'head') : { kind: 'surface' };
  if (troubles.length > 0 || !pocket) return { ok: false, troubles };

  return designed({
    side,
    fastening,
    thread,
    class: wish.class,
    head,
    seat,
    pocket,
    clearance: clearance.diameter,
    washer,
    nut,
    bearingHoles: bearingHoles(input, headsOutside, clearance.diameter, washer, nut),
    friction: wish.friction ?? null,
    seats: seatsOf(input, headsOutside, clearance.diameter, washer, nut !== null),
    parent: fastening === 'through' ? null : parent,
    engagement,
    threadIn: fastening === 'through' ? 'nut' : fastening === 'into_flange' ? 'flange' : 'adapter',
    length: wish.length === 'auto' ? null : wish.length,
    shared,
  });
}

/** Depth of the pocket below the face, mm: to the seat of a counterbore, to the end of a countersink's cone. */
export function pocketDepth(fixing: Fixing): number {
  const { pocket, clearance } = fixing;
  if (pocket.kind === 'counterbore') return pocket.depth;
  if (pocket.kind === 'countersink') return (pocket.diameter - clearance) / 2 / tan((pocket.angle * Math.PI) / 360);
  return 0;
}

/** Radius that the head, washer or pocket takes up on the adapter's face, mm. */
export function pocketRadius(fixing: Fixing): number {
  const { pocket } = fixing;
  if (pocket.kind !== 'surface') return pocket.diameter / 2;
  return fixing.seat === 'surface' ? Math.max(fixing.head.dk, fixing.washer?.outside ?? 0) / 2 : fixing.clearance / 2;
}
