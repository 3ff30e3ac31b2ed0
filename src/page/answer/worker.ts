/** The core in a worker: judging and making never hold up a keystroke. The same program serves whoever edits and whoever makes files. */
import {
  answerCircle,
  answerRegister,
  answerRunout,
  askedPatterns,
  askedPreflight,
  commaInDoubt,
  editJob,
  type Finding,
  type Joint,
  judgeJob,
  liveBodies,
  makeFiles,
  type PatternList,
  parsePatterns,
  preflightDxf,
  readJob,
  shownPreflight,
  typedValues,
} from '../../core.ts';
import type { Answer, Ask, Measuring, Reply } from './engine.ts';
import { Stepwise } from './stepwise.ts';

const texts = import.meta.glob<string>('../../../presets/flanges/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});
let patterns: PatternList | undefined;
const known = () =>
  (patterns ??= parsePatterns(
    Object.fromEntries(Object.entries(texts).map(([path, text]) => [path.split('/').at(-1) ?? path, text])),
  ));

interface Known {
  readonly text: string;
  readonly joint: Joint;
  readonly findings: readonly Finding[];
}
/** The joint that is shown: meshes and files are made of it. */
let last: Known | undefined;

function joined(text: string): Known {
  if (last?.text === text) return last;
  const judged = judgeJob(text, 'job', known());
  if (!judged.ok) throw new Error('The job has errors: mend them first.');
  last = { text, joint: judged.joint, findings: judged.findings };
  return last;
}

/** What was measured by picture, worked out. */
function answerMeasured(of: Measuring) {
  switch (of.what) {
    case 'circle':
      return answerCircle({ units: 'mm', instrument: 'caliper', ...of.typed });
    case 'register':
      return answerRegister({ units: 'mm', ...of.typed });
    case 'runout':
      return answerRunout({ units: 'mm', instrument: 'dial', ...of.typed });
  }
}

async function answer(ask: Ask, tell: (part: Answer) => void): Promise<Answer> {
  switch (ask.kind) {
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
    case 'measure': {
      // "49,37" would be read as two readings here: whoever typed it in a picture is asked.
      const typed: readonly unknown[] = Object.values(ask.of.typed);
      const doubts = typed.map((one) => (typeof one === 'string' ? commaInDoubt(one) : null));
      const doubt = doubts.find((sentence) => sentence !== null);
      if (doubt) return { kind: 'refused', why: doubt };
      const measured = answerMeasured(ask.of);
      if (!measured.ok) return { kind: 'refused', why: measured.why };
      const { title, lines, notes, result } = measured.value;
      return { kind: 'measured', title, lines: [...lines, ...notes], result };
    }
    case 'edit': {
      let { text } = ask;
      for (const { path, typed } of ask.edits) {
        const edited = editJob(text, path, typed);
        if (!edited.ok) return { kind: 'refused', why: edited.why };
        text = edited.text;
      }
      return { kind: 'edited', text };
    }
    case 'patterns': {
      const { flanges, nearMisses } = known();
      const found = askedPatterns(ask.typed, ask.units, flanges, nearMisses);
      return found.ok
        ? { kind: 'patterns', near: found.near, isOne: found.isOne }
        : { kind: 'refused', why: found.why };
    }
    case 'preflight': {
      const { file, bytes, text, ...typed } = ask.of;
      // A job with errors has no limits to hold: the usual ones do.
      const read = readJob(text, 'job');
      const said = Object.fromEntries(Object.entries(typed).filter(([, value]) => value.trim() !== ''));
      const options = askedPreflight({ ...said, job: read.ok ? read.job : undefined, fileName: file });
      if (!options.ok) return { kind: 'refused', why: options.why.replace(/^--/, '') };
      return { kind: 'preflight', shown: shownPreflight(preflightDxf(bytes, options.value), file) };
    }
    case 'judge':
      throw new Error('judging goes in steps');
    case 'bodies': {
      const { joint, findings } = joined(ask.text);
      return { kind: 'bodies', bodies: await liveBodies(joint, findings, ask.as) };
    }
    case 'make': {
      const { only, force, base } = ask;
      const told = (what: string, share: number) => tell({ kind: 'progress', what, share });
      told('judging the job', 0);
      const { joint, findings } = joined(ask.text);
      const options = { base, jobName: `${base}.job.yaml`, only, force, tell: told };
      return { kind: 'made', made: await makeFiles(joint, findings, options) };
    }
  }
}

const steps = new Stepwise(known, (shown) => (last = shown));

self.addEventListener('message', ({ data: { id, ask } }: MessageEvent<{ readonly id: number; readonly ask: Ask }>) => {
  const reply = (given: Omit<Reply, 'id'>) => self.postMessage({ id, ...given } satisfies Reply);
  if (ask.kind === 'judge') return steps.begin(ask.text, reply);
  answer(ask, (part) => reply({ answer: part, isPart: true })).then(
    (given) => reply({ answer: given }),
    (fault: unknown) => reply({ fault: fault instanceof Error ? fault.message : String(fault) }),
  );
});
