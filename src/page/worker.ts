/** The core in a worker: judging and making never hold up a keystroke. */
import {
  answerCircle,
  editJob,
  type Finding,
  formatErrors,
  type Joint,
  jobJsonSchema,
  judgeJob,
  liveBodies,
  liveView,
  makeFiles,
  type PatternList,
  parsePatterns,
  products,
  starterJob,
  typedValues,
} from '../core.ts';
import type { Answer, Ask, JsonSchema } from './engine.ts';

const texts = import.meta.glob<string>('../../presets/flanges/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});
let patterns: PatternList | undefined;
const known = () =>
  (patterns ??= parsePatterns(
    Object.fromEntries(Object.entries(texts).map(([path, text]) => [path.split('/').at(-1) ?? path, text])),
  ));

const jobs = import.meta.glob<string>('../../presets/*.job.yaml', { query: '?raw', import: 'default', eager: true });
const shippedJobs = () =>
  Object.fromEntries(
    Object.entries(jobs).map(([path, text]) => [path.split('/').at(-1)?.replace('.job.yaml', '') ?? path, text]),
  );

/** The last joint that was judged: files and meshes are made of it. */
let last: { readonly text: string; readonly joint: Joint; readonly findings: readonly Finding[] } | undefined;

function judge(text: string, search: boolean) {
  const judged = judgeJob(text, 'job', known(), { search });
  if (judged.ok && search) last = { text, joint: judged.joint, findings: judged.findings };
  return judged;
}

function joined(text: string) {
  if (last?.text !== text) judge(text, true);
  if (last?.text !== text) throw new Error('The job has errors: mend them first.');
  return last;
}

async function answer(ask: Ask): Promise<Answer> {
  switch (ask.kind) {
    case 'open':
      return {
        kind: 'opened',
        schema: jobJsonSchema() as JsonSchema,
        jobs: shippedJobs(),
        starter: starterJob(),
        kinds: [
          ...products.map(({ kind, about }) => ({ kind, about })),
          { kind: 'report', about: 'report: a page to print, text, data' },
        ],
      };
    case 'take': {
      // The search names its way as keys of a job; each of them is set by itself, so that the rest of the file stays.
      let { text } = ask;
      for (const [path, value] of Object.entries(typedValues(ask.keys))) {
        if (value.startsWith('{')) continue;
        const edited = editJob(text, path.split('.'), value);
        if (!edited.ok) return { kind: 'refused', why: edited.why };
        text = edited.text;
      }
      return { kind: 'edited', text };
    }
    case 'circle': {
      const answer = answerCircle({ units: 'mm', instrument: 'caliper', ...ask.typed });
      if (!answer.ok) return { kind: 'refused', why: answer.why };
      const { title, lines, notes, result } = answer.value;
      const circle = result.circle as { readonly value: number; readonly doubt: number } | undefined;
      return {
        kind: 'measured',
        title,
        lines: [...lines, ...notes],
        circle: circle?.value ?? null,
        doubt: circle?.doubt ?? null,
      };
    }
    case 'edit': {
      const edited = editJob(ask.text, ask.path, ask.typed);
      return edited.ok ? { kind: 'edited', text: edited.text } : { kind: 'refused', why: edited.why };
    }
    case 'judge': {
      const judged = judge(ask.text, ask.search);
      return judged.ok
        ? { kind: 'judged', view: liveView(judged.joint, judged.findings), values: typedValues(ask.text) }
        : {
            kind: 'errors',
            errors: judged.errors,
            text: formatErrors(judged.errors, ask.text),
            values: typedValues(ask.text),
          };
    }
    case 'bodies':
      return { kind: 'bodies', bodies: await liveBodies(joined(ask.text).joint) };
    case 'make': {
      const { joint, findings } = joined(ask.text);
      const { only, force, base } = ask;
      return {
        kind: 'made',
        made: await makeFiles(joint, findings, { base, jobName: `${base}.job.yaml`, only, force }),
      };
    }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<{ readonly id: number; readonly ask: Ask }>) => {
  answer(data.ask).then(
    (given) => self.postMessage({ id: data.id, answer: given }),
    (fault: unknown) =>
      self.postMessage({ id: data.id, fault: fault instanceof Error ? fault.message : String(fault) }),
  );
});
