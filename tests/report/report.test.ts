import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import { numberText, quantityText } from '../../src/report/numbers.ts';
import { plain, wrap } from '../../src/report/plain-text.ts';
import { leading, overallVerdict, worstFirst } from '../../src/report/rank.ts';
import { type JointToReport, marginText, reportData } from '../../src/report/report-data.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportJson } from '../../src/report/report-json.ts';
import { reportText } from '../../src/report/report-text.ts';
import { screwsToBuy } from '../../src/report/screw-list.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { parseXml } from '../drawing/svg-help.ts';
import { pictures as drawings, findings, joint } from './fixture.ts';

const data = reportData(joint, findings);
const only = (verdict: Finding['verdict']): Finding[] => findings.filter((f) => f.verdict === verdict);

describe('reportData', () => {
  it('puts the worst first and keeps every finding', () => {
    expect(data.findings.map((f) => f.verdict)).toEqual(['fail', 'caution', 'not assessed', 'pass', 'pass', 'pass']);
    expect(data.findings.filter((f) => f.verdict === 'pass').map((f) => f.code)).toEqual([
      'wall-to-rim',
      'web-between-holes',
      'wheel-magnetic',
    ]);
    expect(worstFirst([...findings].reverse())).toEqual(data.findings.map(({ sense: _, ...finding }) => finding));
  });

  it('takes the worst verdict, and never a pass from what was not assessed', () => {
    expect(overallVerdict(findings)).toBe('fail');
    expect(overallVerdict([...only('pass'), ...only('caution')])).toBe('caution');
    expect(overallVerdict([...only('pass'), ...only('not assessed')])).toBe('pass');
    expect(overallVerdict(only('not assessed'))).toBe('not assessed');
    expect(overallVerdict([])).toBe('not assessed');
    expect(data.counts).toEqual({ fail: 1, caution: 1, 'not assessed': 1, pass: 3 });
    expect(data.unassessed).toBe('1 check was not assessed and counts neither way.');
  });

  it('names the number that matters most in the headline', () => {
    expect(data.headline).toBe('Thread engagement: 12 mm against a limit of 15 mm, 3 mm short.');
    expect(reportData(joint, only('pass')).headline).toBe(
      'Nothing fails. Nearest to its limit: wall to rim: 8.25 mm against a limit of 5 mm, 3.25 mm to spare.',
    );
    expect(reportData(joint, only('not assessed')).headline).toContain('Nothing is known to be good');
    expect(reportData(joint, []).headline).toBe('Nothing was checked.');
    expect(leading(only('pass'))?.code).toBe('wall-to-rim');
  });

  it('says short below a limit, over above it', () => {
    const f = (value: number, limit: number, margin: number): Finding => ({
      ...(findings[0] as Finding),
      value,
      limit,
      margin,
    });
    expect(marginText(f(12, 15, -3), 'mm')).toBe('3 mm short');
    expect(marginText(f(0.13, 0.1, -0.03), 'mm')).toBe('0.03 mm over');
    expect(marginText(f(0.1, 0.1, 0), 'mm')).toBe('0 mm to spare');
  });

  it('lists remedies worst first and says the same thing once', () => {
    expect(data.next.map((n) => n.code)).toEqual(['thread-engagement', 'register-centres', 'joint-strength']);
    const twice = only('fail').flatMap((f) => [f, { ...f, feature: 'driving-screws' }]);
    expect(reportData(joint, twice).next.length).toBe(1);
  });

  it('says what governs the thickness, and how the clocking was found', () => {
    const line = (label: string) => data.keyNumbers.find((k) => k.label === label);
    expect(line('Adapter thickness')).toEqual({
      label: 'Adapter thickness',
      value: '26.00 mm',
      note: 'chosen; least 25.50 mm: thread engagement and drill point, driven side',
    });
    expect(line('Clocking')?.note).toContain('smallest web between the patterns 6.52 mm');
    expect(line('Adapter mass')?.value).toBe('756.0 g');
  });

  it('admits what rests on memory and what was not assessed', () => {
    expect(data.limits.some((l) => l.includes('1 number rests on memory'))).toBe(true);
    expect(data.limits.some((l) => l.includes('joint strength') && l.includes('not assessed'))).toBe(true);
    expect(data.limits.some((l) => l.includes('Fatigue, impact'))).toBe(true);
  });
});

describe('screwsToBuy', () => {
  it('counts screws and washers, equal ones together', () => {
    expect(screwsToBuy(joint).map((l) => `${l.count} ${l.what}`)).toEqual([
      '6 M10 x 25 socket head cap screw',
      '6 M10 x 30 hexagon head screw',
      '6 M10 washer, 20 outside, 2 thick',
    ]);
    const [first] = joint.screws;
    if (!first) throw new Error('the demo joint has no screws');
    expect(screwsToBuy(joint, [first, { ...first, id: 'other' }]).map((l) => l.count)).toEqual([12]);
    const bolts = screwsToBuy(joint, [
      {
        ...first,
        length: null,
        washer: { outside: 20, thickness: 2 },
        nut: { height: 8.4, acrossFlats: 16 },
      },
    ]);
    expect(bolts.map((l) => l.count)).toEqual([6, 12, 6]);
    expect(bolts[0]?.what).toContain('length to be chosen');
    // 31.75 / 25.4 = 1.25.
    expect(screwsToBuy(joint, [{ ...first, thread: '3/8-24 UNF', length: 31.75 }])[0]?.what).toContain(
      '3/8-24 UNF x 1.25 in socket',
    );
  });
});

describe('numbers', () => {
  it('shows about four figures, no minus zero, no exponent', () => {
    expect([12, 0.1 + 0.2, -1e-9, 1234.5678, 123.456, 0.00042].map((value) => numberText(value))).toEqual([
      '12',
      '0.3',
      '0',
      '1235',
      '123.5',
      '0.00042',
    ]);
    expect(numberText(Number.NaN)).toBe('no number');
    expect(quantityText(25.4, 'mm', 'in')).toBe('25.4 mm (1.0000 in)');
    // A register of 59.995 is not one of 59.990.
    expect(quantityText(59.995, 'mm', 'mm')).toBe('59.995 mm');
    expect(quantityText(null, 'mm', 'mm')).toBe('-');
  });
});

describe('reportText', () => {
  const text = reportText(data);

  it('keeps a space between a name that is longer than its column and the value, within the width', () => {
    const [first] = data.keyNumbers;
    if (!first) throw new Error('no key number');
    const label = 'A name of more than its column';
    const long = reportText({ ...data, keyNumbers: [{ ...first, label, value: '0.08 %', note: 'note '.repeat(30) }] });
    expect(long).toContain(`  ${label} 0.08 %; note`);
    expect(Math.max(...long.split('\n').map((row) => row.length))).toBeLessThanOrEqual(100);
  });

  it('is ASCII, at most 100 columns, without trailing blanks', () => {
    const hostile = {
      ...joint,
      job: {
        ...joint.job,
        title: `\u001b[31mbad\u0007 \u202e\u00d85 \u201cx\u201d \u4e2d ${'long '.repeat(40)}`,
      },
    };
    for (const out of [text, reportText(reportData(hostile, findings))]) {
      for (const line of out.split('\n')) {
        expect(line.length).toBeLessThanOrEqual(100);
        expect(line).toMatch(/^[ -~]*$/);
        expect(line).toBe(line.trimEnd());
      }
    }
  });

  it('gives value, limit, margin, why and what to do for a failing check, one line for a pass', () => {
    expect(text).toContain('  value   12 mm, at least 15 mm, 3 mm short\n');
    expect(text).toContain('  do      Make the adapter 3 mm thicker, or use screws 5 mm longer.\n');
    expect(text).toMatch(/^PASS {2}wall to rim \[driven-screws\] +3\.25 mm to spare$/m);
    expect(text).toMatch(/^NOT ASSESSED {2}joint strength/m);
    expect(text).toContain('FROM MEMORY');
    expect(text).toContain('can kill');
  });

  it('has colour only through paint', () => {
    const painted = reportText(data, { paint: (t, style) => `{${style}:${t}}` });
    expect(painted).toContain('{fail:FAIL}');
    expect(painted).toContain('{heading:What to do next}');
    expect(painted.replace(/\{[a-z ]+:([^}]*)\}/g, '$1')).toBe(text);
  });

  it('wraps and spells out', () => {
    expect(plain('\u00d830 \u00b10.1 30\u00b0 caf\u00e9\u0000\n')).toBe('dia 30 +/-0.1 30 deg cafe ');
    expect(wrap('aa bb cc', 5)).toEqual(['aa bb', 'cc']);
    expect(wrap('aaaaaaa b', 3)).toEqual(['aaa', 'aaa', 'a b']);
  });
});

describe('reportJson', () => {
  it('has exactly the published keys, in order', () => {
    const json = JSON.parse(JSON.stringify(reportJson(data, 'demo.job.yaml')));
    expect(Object.keys(json)).toEqual(['job', 'title', 'verdict', 'findings', 'assumed']);
    expect(json.job).toBe('demo.job.yaml');
    expect(json.verdict).toBe('fail');
    for (const f of json.findings)
      expect(Object.keys(f)).toEqual([
        'code',
        'feature',
        'title',
        'value',
        'limit',
        'unit',
        'verdict',
        'margin',
        'why',
        'remedy',
        'source',
      ]);
    expect(json.assumed[0]).toEqual({
      path: 'driven.register.depth',
      value: '3.5 mm',
      from: 'preset demo-companion, from memory',
      memory: true,
    });
  });

  it('writes no number that JSON does not have, and passes nothing else on', () => {
    const odd = { ...(findings[0] as Finding), value: Number.NaN, margin: Infinity, limit: -0, extra: 1 };
    const [f] = reportJson(reportData(joint, [odd]), 'x').findings;
    expect(JSON.stringify(f)).toContain('"value":null,"limit":0');
    expect(f).not.toHaveProperty('extra');
  });
});

describe('reportHtml', () => {
  const pictures = drawings.map((d) => ({
    caption: d.title,
    svg: writeSvg(d, { standalone: false }),
  }));
  const page = reportHtml(data, pictures);
  const count = (text: string, part: string): number => text.split(part).length - 1;

  it('holds every finding code once, passes included', () => {
    for (const f of findings) expect(count(page, `| ${f.code}<`), f.code).toBe(1);
    for (const f of findings) expect(count(page, f.code), f.code).toBe(1);
  });

  it('loads nothing and runs nothing', () => {
    expect(page).not.toMatch(/https?:|<script|<link|<img|@import|\son\w+=|javascript:/i);
    expect(page).toMatch(/Content-Security-Policy" content="default-src 'none'/);
    for (const [, target] of page.matchAll(/url\(([^)]*)\)/g)) expect(target).toMatch(/^#fw-/);
  });

  it('escapes hostile text wherever it comes from', () => {
    const bad = '</title><script>alert("x")</script>\u0000\u001b[2J & \'q\' \u202e';
    const f: Finding = {
      ...(findings[0] as Finding),
      code: bad,
      feature: bad,
      title: bad,
      why: bad,
      remedy: bad,
      source: bad,
      unit: bad,
      verdict: 'fail',
    };
    const hostile: JointToReport = {
      ...joint,
      job: { ...joint.job, title: bad, units: 'mm' },
      assumptions: [{ path: bad, value: bad, from: bad, memory: true }],
      screws: joint.screws.map((s) => ({ ...s, label: bad, thread: bad })),
      adapterMaterial: { ...joint.adapterMaterial, name: bad },
    };
    const files = { made: [{ kind: bad, path: bad, bytes: 1 }], held: [{ kind: bad, why: bad }] };
    const out = reportHtml(reportData(hostile, [f], files), [{ caption: bad, svg: pictures[0]?.svg ?? '' }]);
    expect(out).not.toContain('<script');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be there
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
    expect(count(out, '&lt;script&gt;alert(&quot;x&quot;)')).toBeGreaterThan(10);
    expect(parseXml(asXml(out)).length).toBeGreaterThan(50);
  });

  it('is well-formed, with one id for each thing', () => {
    const elements = parseXml(asXml(page));
    const ids = elements.flatMap((e) => e.attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    expect(elements.filter((e) => e.tag === 'figure').length).toBe(4);
    for (const a of elements.filter((e) => e.tag === 'a')) expect(ids).toContain(a.attributes.href?.slice(1));
    for (const th of elements.filter((e) => e.tag === 'th')) expect(['col', 'row']).toContain(th.attributes.scope);
  });

  it('has one h1 and headings in order, in English', () => {
    expect(page).toContain('<html lang="en">');
    const levels = [...page.matchAll(/<h([1-6])/g)].map((m) => Number(m[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((l) => l === 1).length).toBe(1);
    for (const [i, l] of levels.slice(1).entries()) expect(l - (levels[i] as number)).toBeLessThanOrEqual(1);
  });

  it('says the verdict in words, and the safety note', () => {
    expect(page).toContain('<p class="word">FAIL</p>');
    expect(page).toContain('can kill');
    expect(page).toContain('MEMORY: measure it.');
  });

  it('shows inches beside mm when the job is in inches', () => {
    const inches = reportHtml(reportData({ ...joint, job: { ...joint.job, units: 'in' } }, findings));
    // 26 / 25.4 = 1.02362...
    expect(inches).toContain('26.00 mm (1.0236 in)');
    expect(page).not.toContain(' in)');
  });

  it('lists files made and held back when they are known', () => {
    const out = reportHtml(
      reportData(joint, findings, {
        made: [{ kind: 'mock-up', path: 'out/a.stl', bytes: 9 }],
        held: [{ kind: 'outline', why: 'a check failed' }],
      }),
    );
    expect(out).toContain('held back');
    expect(out).toContain('out/a.stl (9 bytes)');
    expect(page).not.toContain('held back');
  });
});

/** The page as XML: void elements closed, the document type dropped. */
function asXml(text: string): string {
  return text.replace(/^<!doctype html>\n/, '').replace(/<(meta|col)(\s[^>]*)?>/g, '<$1$2/>');
}
