/**
 * Drilling programs in plain ISO 6983 (RS-274) words: G0, G1, the cycles G81, G83, G84, G85, and nothing that only one maker's control
 * knows. Every number carries its decimal point: without one, old controls count in thousandths. The same program gives the same bytes.
 */
import type { Program, ProgramCut, ProgramTool } from '../model/program.ts';

/** Comment lines are broken before this many characters; controls show few. */
const wide = 68;

/** A number with its point, four decimals at most, never -0. */
function number(value: number): string {
  const text = value.toFixed(4).replace(/(\.\d*?)0+$/, '$1');
  const full = text.endsWith('.') ? `${text}0` : text;
  return Number(full) === 0 ? '0.0' : full;
}

/** Text that may stand within the brackets of a comment: capital ASCII without brackets, semicolons or percent signs. */
function words(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[([{]/g, '- ')
    .replace(/[)\]}]/g, '')
    .replace(/[;%]/g, ',')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/\s+/g, ' ')
    .trim()
    .toUpperCase();
}

/** A comment, broken at spaces into as many lines as it needs. */
export function comment(text: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words(text).split(' ')) {
    if (line !== '' && line.length + 1 + word.length > wide) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((part) => `(${part})`);
}

function stop(text: string): string[] {
  return [...comment(text), 'M0'];
}

/** Depths of the pecks to a bottom, none deeper than `peck`, all alike. */
function pecks(from: number, to: number, peck: number): number[] {
  const count = Math.max(1, Math.ceil((from - to) / peck - 1e-9));
  return Array.from({ length: count }, (_, i) => from - ((from - to) * (i + 1)) / count);
}

/** One hole, move by move. Nothing is done at rapid below the safe height but drawing the tool straight out. */
function spelled({ stroke, feed, peck }: ProgramCut, z: number, safe: number, travel: number): string[] {
  const f = `F${number(feed)}`;
  const bottoms = stroke === 'peck' && peck !== null ? pecks(Math.min(safe, 0), z, peck) : [z];
  const lines = [`G0 Z${number(safe)}`];
  for (const bottom of bottoms) {
    lines.push(`G1 Z${number(bottom)} ${f}`);
    if (bottom !== bottoms[bottoms.length - 1]) lines.push(`G0 Z${number(safe)}`);
  }
  return stroke === 'feed out'
    ? [...lines, `G1 Z${number(safe)} ${f}`, `G0 Z${number(travel)}`]
    : [...lines, `G0 Z${number(travel)}`];
}

const cycles = { plain: 'G81', peck: 'G83', 'feed out': 'G85', tap: 'G84' } as const;

function cutLines(cut: ProgramCut, { safe, travel, canned }: Program): string[] {
  const lines = comment(`${cut.title}: ${cut.holes.map(({ tag }) => tag).join(' ')}`);
  // A tap moves with its spindle: that can only be said by its cycle.
  if (canned || cut.stroke === 'tap') {
    const code = cycles[cut.stroke];
    const q = cut.stroke === 'peck' && cut.peck !== null ? ` Q${number(cut.peck)}` : '';
    cut.holes.forEach(({ x, y, z }, i) => {
      const place = `X${number(x)} Y${number(y)} Z${number(z)}`;
      const all = `G98 ${code} ${place} R${number(safe)}${q} F${number(cut.feed)}`;
      lines.push(i === 0 ? all : place);
    });
    return [...lines, 'G80'];
  }
  for (const { x, y, z } of cut.holes) {
    lines.push(`G0 X${number(x)} Y${number(y)}`, ...spelled(cut, z, safe, travel));
  }
  return lines;
}

function toolLines({ number: n, name, rpm }: ProgramTool, travel: number, isFirst: boolean): string[] {
  return [
    '',
    ...comment(`T${n} ${name}`),
    ...(isFirst ? [] : ['M5']),
    `T${n} M6`,
    `G43 H${n}`,
    `G0 Z${number(travel)}`,
    ...(rpm > 0 ? [`S${rpm} M3`] : []),
  ];
}

/** The text of a program. */
export function writeRs274(program: Program): string {
  const { header, tools, cuts, travel, start, stops } = program;
  const lines = ['%', ...header.flatMap((line) => comment(line)), ''];
  lines.push('G21 G17 G90 G94', 'G40 G49 G80', 'G54');
  tools.forEach((tool, i) => {
    // The first tool stands still over the zero, for the eye to check, before its spindle starts.
    if (i === 0) {
      lines.push(...toolLines({ ...tool, rpm: 0 }, travel, true), 'G0 X0.0 Y0.0');
      lines.push(...start.flatMap((line) => comment(line)), 'M0');
      if (tool.rpm > 0) lines.push(`S${tool.rpm} M3`);
    } else {
      lines.push(...toolLines(tool, travel, false));
    }
    for (const cut of cuts) if (cut.tool === tool.number) lines.push(...cutLines(cut, program));
  });
  lines.push('', 'M5', `G0 Z${number(travel)}`, 'G0 X0.0 Y0.0');
  lines.push(...stops.flatMap(stop), 'M30', '%');
  return `${lines.join('\n')}\n`;
}
