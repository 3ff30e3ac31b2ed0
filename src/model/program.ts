/** A drilling program as plain data: what a machine is told, before any of it is written in a machine's words. mm, rpm, mm/min. */

export interface ProgramTool {
  readonly number: number;
  readonly name: string;
  readonly diameter: number;
  /** rpm; 0: the spindle stands still. */
  readonly rpm: number;
}

/** How the tool goes down and comes back: at once; in pecks; out at the feed it went in; with the spindle reversed. */
export type Stroke = 'plain' | 'peck' | 'feed out' | 'tap';

/** One tool in one set of holes. */
export interface ProgramCut {
  readonly tool: number;
  readonly title: string;
  readonly stroke: Stroke;
  /** mm/min */
  readonly feed: number;
  /** Depth of a peck; null but for pecks. */
  readonly peck: number | null;
  readonly holes: readonly { readonly tag: string; readonly x: number; readonly y: number; readonly z: number }[];
}

export interface Program {
  /** Lines that stand at the head, before the first move. */
  readonly header: readonly string[];
  readonly tools: readonly ProgramTool[];
  readonly cuts: readonly ProgramCut[];
  /** No rapid move towards the work goes below this height. */
  readonly safe: number;
  /** Height of travel from hole to hole. */
  readonly travel: number;
  /** What is shown when the program stops over the middle of the bore, before the first cut. */
  readonly start: readonly string[];
  /** What is left to do by hand at the end, a stop for each; empty where nothing is. */
  readonly stops: readonly string[];
  /** Holes by canned cycles, or move by move. */
  readonly canned: boolean;
}
