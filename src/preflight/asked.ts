/** What a pre-flight is asked for, as typed on a command line or as a job has it. */
import type { JobInput } from '../job/schema.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { PreflightOptions } from './preflight.ts';

export interface AskedPreflight {
  /** "3", "3 mm", "1/8 in"; a bare number is mm. */
  readonly thickness?: string | undefined;
  /** Id or plain name of a material. */
  readonly material?: string | undefined;
  readonly units?: string | undefined;
  /** A job: its service limits, and thickness and material of the part where they are not typed. */
  readonly job?: Pick<JobInput, 'sheet' | 'wheel' | 'bracket'> | undefined;
  /** Name of the drawing: one with "bracket" in it is the job's bracket. */
  readonly fileName?: string | undefined;
}

/** Options of a pre-flight; a miss is a sentence for whoever typed them. */
export function askedPreflight({
  thickness,
  material,
  units,
  job,
  fileName = '',
}: AskedPreflight): Lookup<PreflightOptions> {
  const isBracket = /bracket/i.test(fileName) && job?.bracket !== undefined;
  const part = isBracket ? job?.bracket : (job?.wheel ?? job?.bracket);
  let sheet = part?.thickness;
  if (thickness !== undefined) {
    const typed = parseQuantity(thickness, 'length', 'mm');
    if (!typed.ok) return missing(`--thickness: ${typed.why}`);
    if (!(typed.value > 0 && typed.value <= 100)) return missing('--thickness wants more than 0 and at most 100 mm.');
    sheet = typed.value;
  }
  let metal: Material | undefined;
  const name = material ?? part?.material;
  if (name !== undefined) {
    const known = findMaterial(name);
    if (!known.ok) return missing(`--material: ${known.why}`);
    metal = known.value;
  }
  if (units !== undefined && units !== 'mm' && units !== 'in') {
    return missing(`--units wants mm or in; got "${units.slice(0, 20)}".`);
  }
  return found({ thickness: sheet, material: metal, units, profile: job?.sheet });
}
