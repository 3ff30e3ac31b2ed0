/** How Node compiles the geometry kernels. Only bin.ts may set it: it holds for the whole process. */
import { setFlagsFromString } from 'node:v8';

/** The newest engine on which the flag was tried (Node 26): one that did not know it would complain on the terminal. */
const newestTried = 14;
/** Some hundred times the engine's own: what a job asks of a kernel never reaches it. */
const budget = 100_000_000;

/**
 * Keeps the kernels' first, quick translation. The exact modeller is 23 MB of code of which a job runs a little, each piece a few times: to translate
 * it a second time, better and slowly, costs a cold process more than it gives (measured: two fifths of the time that STEP takes).
 */
export function keepQuickTranslation(): void {
  const [engine] = process.versions.v8.split('.').map(Number);
  if ((engine ?? Number.POSITIVE_INFINITY) <= newestTried) setFlagsFromString(`--wasm-tiering-budget=${budget}`);
}
