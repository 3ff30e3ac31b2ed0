/** An invented joint for gauges and paper, and all files of some kinds made from it. */
import { judgeJob, type Made, makeFiles } from '../../src/core.ts';

/** A shallow spigot read with a caliper, and a shallow recess read with a micrometer; holes that tell left from right. */
export const demoJob = `
job: 1
title: Demo joint
driving:
  name: demo hub
  outside: 112
  thickness: 14
  register: { gender: male, diameter: 40.00, depth: 4 }
  holes: { circle: 84, angles: [10, 100, 170, 290], thread: M8, depth: 16 }
driven:
  name: demo companion
  outside: 128
  thickness: 9
  register: { gender: female, diameter: { value: 36.00, instrument: micrometer }, depth: 3 }
  holes: { circle: 108, angles: [0, 80, 200], diameter: 10.4 }
`;

export async function makeDemo(only: readonly string[], text = demoJob): Promise<Made> {
  const judged = judgeJob(text, 'demo.job.yaml', { flanges: [], nearMisses: [] }, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join('\n'));
  return makeFiles(judged.joint, judged.findings, { base: 'demo', jobName: 'demo.job.yaml', only, force: false });
}

export function fileOf(made: Made, name: string): Uint8Array {
  const file = made.files.find((f) => f.name === name);
  if (!file) throw new Error(`no file ${name} among ${made.files.map((f) => f.name).join(', ')}`);
  return file.bytes;
}
