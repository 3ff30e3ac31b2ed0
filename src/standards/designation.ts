import type { Lookup } from './table.ts';
import { found, missing } from './table.ts';

/** What a screw or thread designation says, before any table is asked. */
export interface Designation {
  readonly system: 'metric' | 'unified';
  /** The size word that the head, hole and washer tables use: 'M10', '3/8', '#10'. */
  readonly size: string;
  /** Nominal diameter, mm. */
  readonly d: number;
  /** Pitch in mm when the designation names it. */
  readonly pitch?: number;
  /** Threads per inch when the designation names them. */
  readonly tpi?: number;
  /** UNC or UNF when the designation names it. */
  readonly series?: 'UNC' | 'UNF';
}

const metric = /^M(\d+(?:\.\d+)?)(?:[x*\u00d7](\d+(?:\.\d+)?))?(?:-\d[a-z]\w*)?$/i;
const unified =
  /^(?:#(\d{1,2})|(\d{1,2})\/(\d{1,2})|(\d{1,2})(?=-\d))(?:in|"|'')?(?:-(\d{1,2}))?(?:-?(unc|unf|unef|un))?(?:-\d[ab])?$/i;

/**
 * Read 'M10', 'M10x1.25', 'M10x1.25-6H', '3/8-16', '3/8-16 UNC', '#10-24', '1/4', or the bare size of a screw.
 * Spaces and letter case do not matter. Says what it accepts when it cannot read the text.
 */
export function readDesignation(text: string): Lookup<Designation> {
  const word = text.replace(/\s+/g, '');
  const asMetric = metric.exec(word);
  if (asMetric !== null) {
    const d = Number(asMetric[1]);
    const pitch = asMetric[2];
    return found({ system: 'metric', size: `M${d}`, d, ...(pitch === undefined ? {} : { pitch: Number(pitch) }) });
  }
  const asUnified = unified.exec(word);
  if (asUnified !== null) return readUnified(text, asUnified);
  return missing(`"${text}" is not a thread; write M10, M10x1.25, 3/8-16 or #10-24.`);
}

function readUnified(text: string, match: RegExpExecArray): Lookup<Designation> {
  const [, numberSize, above, below, bareNumber, tpi, series] = match;
  const number = numberSize ?? bareNumber;
  const fraction = Number(above) / Number(below);
  if (number === undefined && !(fraction > 0 && Number.isFinite(fraction))) {
    return missing(`"${text}" is not a thread; write M10, M10x1.25, 3/8-16 or #10-24.`);
  }
  const upper = series?.toUpperCase();
  if (upper === 'UNEF' || upper === 'UN')
    return missing(`"${text}": only the UNC and UNF series are in the tables here.`);
  // Number sizes grow by 0.013 in from 0.060 in for #0 (ASME B1.1).
  const inches = number === undefined ? fraction : 0.06 + 0.013 * Number(number);
  return found({
    system: 'unified',
    size: number === undefined ? `${above}/${below}` : `#${number}`,
    d: Math.round(inches * 25.4 * 1e6) / 1e6,
    ...(tpi === undefined ? {} : { tpi: Number(tpi) }),
    ...(upper === 'UNC' || upper === 'UNF' ? { series: upper } : {}),
  });
}
