import { cutFeeds, cutSpeeds, drillFeeds } from './cutting-speed-tables.ts';
import type { Material } from './materials.ts';

/** What is cut, as far as speeds go. */
export type CuttingGroup = 'aluminium' | 'steel' | 'strong steel' | 'stainless' | 'iron' | 'plastic';

export type CuttingOperation =
  | 'spot'
  | 'drill'
  | 'counterbore'
  | 'countersink'
  | 'ream'
  | 'tap'
  | 'rough turn'
  | 'finish turn';

export type ToolMaterial = 'hss' | 'carbide';

/** A cut to start from. Never a promise: the sound of it and the colour of the chip have the last word. */
export interface StartingCut {
  /** Cutting speed, m/min. */
  readonly speed: number;
  /** rpm, a round number, never above the machine's own. */
  readonly rpm: number;
  /** mm per turn, and mm/min at that rpm. */
  readonly perTurn: number;
  readonly feed: number;
  /** The machine turns no faster. */
  readonly capped: boolean;
  readonly source: string;
  readonly memory: boolean;
}

/** Steel from this tensile strength on, MPa, is cut as the tough kind: about 220 HB. Source: ISO 18265 table A.1, from memory. */
const strongFrom = 700;

/** The group a material is cut as. */
export function cuttingGroup({ family, tensileStrength }: Pick<Material, 'family' | 'tensileStrength'>): CuttingGroup {
  return family === 'steel' && tensileStrength >= strongFrom ? 'strong steel' : family;
}

/** rpm to the next round number below: tens from 100 on, fives under it; at least 5. */
function round(rpm: number): number {
  const step = rpm >= 100 ? 10 : 5;
  return Math.max(step, Math.floor(rpm / step + 1e-9) * step);
}

/** Turns a minute of a diameter, mm, at a cutting speed, m/min: 1000 v / (pi d). */
export const turnsFor = (speed: number, diameter: number): number => (1000 * speed) / (Math.PI * diameter);

/**
 * Speed and feed to start from.
 * @param material what is cut
 * @param operation a tap is never carbide here: its speed is that of high-speed steel
 * @param diameter of the tool (turning: of the work), mm, > 0
 * @param top highest speed of the machine, rpm
 * @param pitch of the thread, mm; tapping only
 */
export function startingCut(
  material: Pick<Material, 'family' | 'tensileStrength'>,
  operation: CuttingOperation,
  tool: ToolMaterial,
  diameter: number,
  top: number,
  pitch?: number,
): StartingCut {
  const group = cuttingGroup(material);
  const word = operation === 'rough turn' || operation === 'finish turn' ? 'turn' : operation;
  const row = cutSpeeds.rows.find((r) => r.group === group && r.operation === word);
  if (!row) throw new Error(`no cutting speed for ${operation} in ${group}`);
  const isCarbide = tool === 'carbide' && row.carbide !== null;
  const speed = isCarbide && row.carbide !== null ? row.carbide : row.hss;
  const free = turnsFor(speed, diameter);
  const rpm = round(Math.min(free, top));
  const perTurn = feedPerTurn(operation, diameter, pitch);
  const memory = row.memory === true || (operation !== 'drill' && operation !== 'tap');
  // A tap moves by its own pitch and by nothing else: no rounding.
  const feed = operation === 'tap' ? Number((rpm * perTurn).toFixed(4)) : Math.max(1, Math.round(rpm * perTurn));
  return { speed, rpm, perTurn, feed, capped: free > top, source: cutSpeeds.source, memory };
}

/** Feed, mm per turn. Drills go by their diameter, taps by their pitch, everything else by what it is. */
function feedPerTurn(operation: CuttingOperation, diameter: number, pitch: number | undefined): number {
  if (operation === 'tap') {
    if (pitch === undefined) throw new Error('a tap needs a pitch');
    return pitch;
  }
  const share = operation === 'spot' ? 0.5 : 1;
  if (operation === 'drill' || operation === 'spot') {
    const row = drillFeeds.rows.find(({ upTo }) => diameter <= upTo) ?? drillFeeds.rows[drillFeeds.rows.length - 1];
    return share * (row?.feed ?? 0);
  }
  const row = cutFeeds.rows.find((r) => r.operation === operation);
  if (!row) throw new Error(`no feed for ${operation}`);
  return row.feed;
}
