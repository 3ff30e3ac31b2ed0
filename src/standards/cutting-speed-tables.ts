import type { StandardTable, TableRow } from './table.ts';

/** Cutting speed to start from, m/min, of one way of cutting one kind of metal. */
export interface CutSpeedRow extends TableRow {
  readonly group: 'aluminium' | 'steel' | 'strong steel' | 'stainless' | 'iron' | 'plastic';
  readonly operation: 'spot' | 'drill' | 'counterbore' | 'countersink' | 'ream' | 'tap' | 'turn';
  readonly hss: number;
  /** null: not used in carbide here. */
  readonly carbide: number | null;
}

/**
 * The low end of what is printed, rounded down: a small machine is not stiff, and a drill that lives is faster than one that burns.
 * Where no figure could be read the row says so.
 */
export const cutSpeeds: StandardTable<CutSpeedRow> = {
  id: 'cutting-speeds',
  edition: 'Published cutting speeds, low ends',
  title: 'Cutting speeds to start from',
  source:
    'tables of drilling, reaming and tapping speeds by hardness as tool makers print them (75 ft/min for a drill in medium carbon steel, 55 in 304, 70 in ductile iron), the table of a teaching shop (reamers half of the drill; carbide twice), a table of turning speeds',
  covers: 'the metals of this project; spotting as drilling; counterbores 80 % of the drill',
  verified: 'secondary',
  unit: 'm/min',
  // biome-ignore format: a table is read row by row
  rows: [
    { group: 'aluminium', operation: 'spot', hss: 60, carbide: 120 },
    { group: 'aluminium', operation: 'drill', hss: 60, carbide: 120 },
    { group: 'aluminium', operation: 'counterbore', hss: 48, carbide: 96 },
    { group: 'aluminium', operation: 'countersink', hss: 30, carbide: 60, memory: true },
    { group: 'aluminium', operation: 'ream', hss: 30, carbide: 60 },
    { group: 'aluminium', operation: 'tap', hss: 15, carbide: null },
    { group: 'aluminium', operation: 'turn', hss: 100, carbide: 200 },
    { group: 'steel', operation: 'spot', hss: 22, carbide: 44 },
    { group: 'steel', operation: 'drill', hss: 22, carbide: 44 },
    { group: 'steel', operation: 'counterbore', hss: 17, carbide: 34 },
    { group: 'steel', operation: 'countersink', hss: 11, carbide: 22, memory: true },
    { group: 'steel', operation: 'ream', hss: 11, carbide: 22 },
    { group: 'steel', operation: 'tap', hss: 12, carbide: null },
    { group: 'steel', operation: 'turn', hss: 20, carbide: 90 },
    { group: 'strong steel', operation: 'spot', hss: 15, carbide: 30 },
    { group: 'strong steel', operation: 'drill', hss: 15, carbide: 30 },
    { group: 'strong steel', operation: 'counterbore', hss: 12, carbide: 24 },
    { group: 'strong steel', operation: 'countersink', hss: 7, carbide: 14, memory: true },
    { group: 'strong steel', operation: 'ream', hss: 7, carbide: 14 },
    { group: 'strong steel', operation: 'tap', hss: 6, carbide: null },
    { group: 'strong steel', operation: 'turn', hss: 15, carbide: 60, memory: true },
    { group: 'stainless', operation: 'spot', hss: 15, carbide: 30 },
    { group: 'stainless', operation: 'drill', hss: 15, carbide: 30 },
    { group: 'stainless', operation: 'counterbore', hss: 12, carbide: 24 },
    { group: 'stainless', operation: 'countersink', hss: 7, carbide: 14, memory: true },
    { group: 'stainless', operation: 'ream', hss: 7, carbide: 14 },
    { group: 'stainless', operation: 'tap', hss: 4, carbide: null },
    { group: 'stainless', operation: 'turn', hss: 20, carbide: 70 },
    { group: 'iron', operation: 'spot', hss: 21, carbide: 42 },
    { group: 'iron', operation: 'drill', hss: 21, carbide: 42 },
    { group: 'iron', operation: 'counterbore', hss: 16, carbide: 32 },
    { group: 'iron', operation: 'countersink', hss: 10, carbide: 20, memory: true },
    { group: 'iron', operation: 'ream', hss: 10, carbide: 20 },
    { group: 'iron', operation: 'tap', hss: 9, carbide: null },
    { group: 'iron', operation: 'turn', hss: 20, carbide: 60, memory: true },
    { group: 'plastic', operation: 'spot', hss: 30, carbide: 60 },
    { group: 'plastic', operation: 'drill', hss: 30, carbide: 60 },
    { group: 'plastic', operation: 'counterbore', hss: 24, carbide: 48 },
    { group: 'plastic', operation: 'countersink', hss: 15, carbide: 30, memory: true },
    { group: 'plastic', operation: 'ream', hss: 15, carbide: 30 },
    { group: 'plastic', operation: 'tap', hss: 15, carbide: null },
    { group: 'plastic', operation: 'turn', hss: 60, carbide: 150 },
  ],
};

/** Feed of a drill, mm per turn, over one diameter up to another, mm. */
export interface DrillFeedRow extends TableRow {
  readonly over: number;
  readonly upTo: number;
  readonly feed: number;
}

/** The low end of a tool maker's ranges, which are printed in thousandths of an inch per turn. */
export const drillFeeds: StandardTable<DrillFeedRow> = {
  id: 'drill-feeds',
  edition: 'Published drill feeds, low ends',
  title: 'Feeds of drills to start from',
  source:
    'as a tool maker prints them: 0.001 to 0.003 in per turn up to 1/8 in, 0.002 to 0.006 up to 1/4, 0.004 to 0.010 up to 1/2, 0.007 to 0.015 up to 1, 0.010 to 0.025 above',
  covers: 'steel, iron and light metals',
  verified: 'secondary',
  unit: 'mm per turn',
  rows: [
    { over: 0, upTo: 3.175, feed: 0.03 },
    { over: 3.175, upTo: 6.35, feed: 0.06 },
    { over: 6.35, upTo: 12.7, feed: 0.12 },
    { over: 12.7, upTo: 25.4, feed: 0.2 },
    { over: 25.4, upTo: 100, feed: 0.26 },
  ],
};

/** Feed of the other cuts, mm per turn. */
export interface CutFeedRow extends TableRow {
  readonly operation: 'counterbore' | 'countersink' | 'ream' | 'rough turn' | 'finish turn';
  readonly feed: number;
}

export const cutFeeds: StandardTable<CutFeedRow> = {
  id: 'cut-feeds',
  edition: 'Common practice',
  title: 'Feeds of the other cuts to start from',
  source:
    'turning: the table of a laboratory shop, 0.010 to 0.020 in per turn to rough (less for a light lathe) and 0.003 to 0.010 to finish; the others common practice',
  covers: 'a small shop',
  verified: 'memory',
  unit: 'mm per turn',
  rows: [
    { operation: 'counterbore', feed: 0.08, memory: true },
    { operation: 'countersink', feed: 0.08, memory: true },
    { operation: 'ream', feed: 0.2, memory: true },
    { operation: 'rough turn', feed: 0.2, memory: true },
    { operation: 'finish turn', feed: 0.08 },
  ],
};
