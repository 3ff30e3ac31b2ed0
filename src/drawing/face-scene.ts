/** What one face of an adapter has to show, turned so that the eye looks along -z: shared by its outlines and its labels. */
import type { Point } from '../model/drawing.ts';
import type { Drilling, Feature, TurnedPart } from '../model/part.ts';
import { cos, sin } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import type { LabelUnits } from './length-text.ts';
import { boltsAreShared } from './register-text.ts';
import { upperSurface } from './round-edges.ts';
import { partTurnedOver } from './turned-profile.ts';

export interface FaceViewInput {
  /** Start of the drawing's id. */
  readonly id: string;
  readonly adapter: TurnedPart;
  /** Where the eye is. */
  readonly from: 'driving' | 'driven';
  /** Angle by which the driven pattern is turned against the driving one, degrees. */
  readonly clocking: number;
  /** Outside diameter of the flange that lies on this face, mm; null when not known. */
  readonly mate: number | null;
  readonly units: LabelUnits;
}

export interface Scene {
  readonly input: FaceViewInput;
  readonly outer: TurnedPart['outer'];
  readonly drillings: readonly Drilling[];
  readonly rim: number;
  readonly size: number;
  /** Direction of an angle of the joint, as it is drawn. */
  readonly seen: (degrees: number) => number;
}

export const onAxis = (d: Drilling): boolean => Math.hypot(d.x, d.y) < 1e-6;

export const featureOf = (part: TurnedPart, id: string | undefined): Feature | undefined =>
  part.features.find((f) => f.id === id);

/** The part as the eye sees it. */
export function sceneOf(input: FaceViewInput): Scene {
  const turned = input.from === 'driving';
  const { outer, drillings } = turned ? partTurnedOver(input.adapter) : input.adapter;
  const rim = Math.max(...outer.map((p) => p.r));
  return {
    input,
    outer,
    drillings,
    rim,
    size: Math.max(1, rim / 18),
    seen: (degrees) => (turned ? 180 - degrees : degrees),
  };
}

export const polar = (r: number, degrees: number): Point => ({
  x: r * cos((degrees * Math.PI) / 180),
  y: r * sin((degrees * Math.PI) / 180),
});

export const widest = (d: Drilling): number => Math.max(...d.profile.map((p) => p.r));

/** Groups of drillings off the axis that one feature names. */
export function holeGroups(scene: Scene): { feature: Feature; holes: Drilling[] }[] {
  return scene.input.adapter.features.flatMap((feature) => {
    const holes = scene.drillings.filter((d) => d.feature === feature.id && !onAxis(d));
    return holes.length > 0 ? [{ feature, holes }] : [];
  });
}

/** The same drillings as they stand in the joint, not turned over. */
export const unturned = ({ input }: Scene, holes: readonly Drilling[]): Drilling[] =>
  input.adapter.drillings.filter((d) => holes.some((h) => h.id === d.id));

/** Height of the surface over a drilling's axis: the drilling is open to the eye when it reaches it. */
export function surfaceOver({ outer, drillings }: Scene, drilling: Drilling): number {
  const others = drillings.filter((d) => onAxis(d) && d !== drilling);
  return upperSurface(outer, others, onAxis(drilling) ? 0 : Math.hypot(drilling.x, drilling.y));
}

/** Angle of the driven pattern from the clocking zero, 0 to 360 degrees; null when there is none to show, or no hole that it would point at. */
export function shownClocking({ input }: Scene): number | null {
  const turn = withinTurn(input.clocking);
  return turn < 0.05 || turn > 359.95 || boltsAreShared(input.adapter) ? null : turn;
}
