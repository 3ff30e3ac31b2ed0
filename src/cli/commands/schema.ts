/** `schema`: the job file's JSON Schema, for editors. */
import { jobJsonSchema } from '../../core.ts';
import { exit, type Io } from '../io.ts';

export async function schema(io: Io): Promise<number> {
  io.out(`${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
  return exit.clean;
}
