/** How well founded the job's own numbers are. */
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, stated } from './check.ts';
import { plural } from './words.ts';

function restsOnMemory(flange: ResolvedFlange): Finding[] {
  if (flange.preset === null || flange.memory.length === 0) return [];
  return [
    stated(
      {
        code: 'rests-on-memory',
        feature: `${flange.side}-flange`,
        title: `${flange.side} flange from the pattern ${flange.preset}`,
        unit: '',
        why: `${plural(flange.memory.length, 'value')} of this pattern (${flange.memory.join(', ')}) ${flange.memory.length === 1 ? 'rests' : 'rest'} on memory, not on a source that was read.`,
        cure: `Measure these on the flange itself and type them under ${flange.side}: typed values replace the pattern's.`,
        source: flange.source ?? 'pattern list',
      },
      'caution',
    ),
  ];
}

function fromPattern(flange: ResolvedFlange): Finding[] {
  if (flange.preset === null || flange.memory.length > 0) return [];
  return [
    stated(
      {
        code: 'pattern-not-measured',
        feature: `${flange.side}-flange`,
        title: `${flange.side} flange from the pattern ${flange.preset}`,
        unit: '',
        why: 'A published pattern is a starting guess; used flanges differ.',
        cure: '',
        source: flange.source ?? 'pattern list',
      },
      'pass',
    ),
  ];
}

export const provenance: Check = {
  id: 'provenance',
  title: 'Where the numbers come from',
  source: 'the job and the pattern list',
  run: (joint) => [joint.driving, joint.driven].flatMap((flange) => [...restsOnMemory(flange), ...fromPattern(flange)]),
};
