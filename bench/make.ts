/**
 * The bench: our meshes beside those of other libraries, judging in a warm process, commands as cold processes. One machine, one run,
 * and ratios: absolute times belong to the machine. Run: npm run bench; npm run bench -- --write puts the ratios into docs/bench.md.
 * With --page: the page in a browser alone, and with --write its own section alone.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join, resolve } from 'node:path';
import { type Cost, coldCosts } from './cold.ts';
import { type JudgingRow, judging } from './judging.ts';
import { meshTable } from './meshes.ts';
import { frame, pageCosts, percentile } from './page.ts';
import { wantedRows } from './wanted.ts';

const isWritten = process.argv.includes('--write');

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, i) => (i === 0 ? '---' : '--:'))), ...rows.map(line)].join('\n');
}

const times = (ratio: number): string => `${Number(ratio.toPrecision(2))}`;

function meshes({ makers, rows }: Awaited<ReturnType<typeof meshTable>>): string {
  const [own = '', ...peers] = makers;
  const first = new Map<string, { size: number; ms: number }>();
  const lines = rows.map(({ part, ms }) => {
    const mine = ms.get(own);
    if (typeof mine !== 'number') throw new Error(`${part}: ${mine}`);
    const [kind = '', size = ''] = part.split(', ');
    const start = first.get(kind) ?? { size: Number.parseInt(size, 10), ms: mine };
    first.set(kind, start);
    const growth = `${times(Number.parseInt(size, 10) / start.size)} : ${times(mine / start.ms)}`;
    const beside = peers.map((peer) => {
      const theirs = ms.get(peer);
      return typeof theirs === 'number' ? `${times(theirs / mine)}` : String(theirs);
    });
    return [part, ...(isWritten ? [] : [mine.toFixed(2)]), growth, ...beside];
  });
  return table(
    [
      'mesh at 0.01 mm',
      ...(isWritten ? [] : ['ours, ms']),
      'size : our time',
      ...peers.map((peer) => `x ours: ${peer}`),
    ],
    lines,
  );
}

function warm(rows: readonly JudgingRow[]): string {
  const base = rows[0]?.ms ?? 1;
  return table(
    ['warm, one job', ...(isWritten ? [] : ['ms', 'a second']), 'x reading the job'],
    rows.map(({ what, ms }) => [what, ...(isWritten ? [] : [ms.toFixed(2), (1000 / ms).toFixed(0)]), times(ms / base)]),
  );
}

function cold(costs: readonly Cost[]): string {
  const [node, loaded, modeller] = costs;
  if (!node || !loaded || !modeller) throw new Error('nothing was measured');
  return table(
    [
      'cold process',
      ...(isWritten ? [] : ['ms', 'processor ms']),
      'x Node',
      'x packages',
      'x modeller',
      'peak memory, x Node',
    ],
    costs.map(({ what, ms, cpu, mb }) => [
      what,
      ...(isWritten ? [] : [ms.toFixed(0), cpu.toFixed(0)]),
      times(cpu / node.cpu),
      times(cpu / loaded.cpu),
      times(cpu / modeller.cpu),
      times(mb / node.mb),
    ]),
  );
}

const pageHead = '## The page, in a browser';

/** The page's own section. A frame is what a 60 Hz screen gives; a busy machine shows in the milliseconds, so its load is told. */
async function pageSection(): Promise<string> {
  const before = loadavg()[0] ?? 0;
  const { rows, aSecond } = await pageCosts();
  const cells = rows.map(({ what, ms, wanted }) => {
    const [half, most] = [percentile(ms, 0.5), percentile(ms, 0.95)];
    const met = wanted === null ? '' : most <= wanted ? 'yes' : 'no';
    return [
      what,
      Math.min(...ms).toFixed(0),
      half.toFixed(0),
      most.toFixed(0),
      times(half / frame),
      times(most / frame),
      wanted === null ? '-' : times(wanted / frame),
      met,
    ];
  });
  const head = [
    'orchard-truck',
    'best, ms',
    'p50, ms',
    'p95, ms',
    'p50, frames',
    'p95, frames',
    'wanted, frames',
    'met',
  ];
  const load = `${before.toFixed(1)} to ${(loadavg()[0] ?? 0).toFixed(1)} processes wanted to run on ${cpus().length} cores`;
  return `${pageHead}

From the event's own time to the first task after the frame that shows what came of it; Debian's Chromium without a graphics card; a frame is
1/60 s. While it was measured, ${load}: where that is more than one a core, the milliseconds are too long by as much.
A steady drag shows ${aSecond.toFixed(0)} new pictures a second.

${table(head, cells)}
`;
}

const bookPath = join(resolve(import.meta.dirname, '..'), 'docs', 'bench.md');
if (process.argv.includes('--page')) {
  const section = await pageSection();
  console.log(section);
  if (isWritten) {
    const [rest = ''] = readFileSync(bookPath, 'utf8').split(pageHead);
    writeFileSync(bookPath, `${rest.trimEnd()}\n\n${section}`);
  }
  process.exit();
}

// Cold processes first: a process that was started by a large one counts the large one's memory as its own.
const costs = coldCosts();
const made = await meshTable();
const judged = await judging('orchard-truck');
const wanted = wantedRows({ makers: made.makers, meshes: made.rows, judging: judged, costs });
const page = `# Bench

Ratios of one run on one machine, made by \`npm run bench -- --write\`. Every mesh has the same part and the same chord error, and its
volume is held against the closed form before its time counts. Larger is slower: "x ours: 20" takes twenty times as long as we do.

## Meshes

A disc of 900 mm with counterbored holes; a wheel of 3 mm sheet whose teeth keep their size. "Size : our time" shows growth: 10 : 10 is linear.

${meshes(made)}

## Judging, warm

${warm(judged)}

## Commands, cold

Processor time of whole processes, so that a busy machine does not count.

${cold(costs)}

## What was wanted

Milliseconds are those of the machine that this was measured on. What the page was wanted to do stands in its own table below.

${table(['wanted', 'limit', 'this run', 'met', 'why not'], wanted)}

${await pageSection()}`;
console.log(page);
if (isWritten) writeFileSync(bookPath, page);
