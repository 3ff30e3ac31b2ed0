/** What the report and the command say of the shaft's speed. */
import { describe, expect, it } from 'vitest';
import { reportData, reportText } from '../../src/core.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { folder, run } from '../cli/terminal.ts';
import { judge, type Patch } from '../validate/help.ts';

const told = (...patches: Patch[]) => {
  const { joint, findings } = judge({ shaft: { tube: { outside: 76.2, wall: 2.11, length: 1300 } } }, ...patches);
  const data = reportData(joint, findings);
  return { data, text: reportText(data), html: reportHtml(data) };
};

describe('tubes that would do', () => {
  it('stand in both reports, with what each is good for', () => {
    // 7479 rpm is 65 % at 4861: at 5200 the job's own tube does not do, 88.9 x 2.11 (8790 by the handbook) does.
    const { data, text, html } = told({ duty: { speed: 5200 } });
    expect(data.tubes?.tubes[0]).toMatch(
      /^88\.9 mm x 2\.11 mm, structural steel S355: critical at 87\d\d rpm, (59|60) % used/,
    );
    for (const page of [text, html]) {
      expect(page).toContain('Tubes that would do');
      expect(page).toContain('Does the shaft stay below its critical speed?');
      expect(page.replace(/\s+/g, ' ')).toContain('from memory: ask the shaft shop');
    }
  });

  it('say that none does, and what then', () => {
    expect(told({ duty: { speed: 20_000 } }).data.tubes?.lead).toMatch(
      /No stock tube does in one piece.*centre bearing/,
    );
  });

  it('are left out without a tube or a speed', () => {
    expect(told({ duty: { speed: undefined } }).data.tubes).toBeNull();
    const { joint, findings } = judge();
    expect(reportText(reportData(joint, findings))).not.toContain('Tubes that would do');
  });

  it('are in inches too where the job is', () => {
    const { joint, findings } = judge({ shaft: { tube: { outside: 76.2, wall: 2.11, length: 1300 } } });
    const inInches = reportData({ ...joint, job: { ...joint.job, units: 'in' } }, findings);
    expect(inInches.tubes?.lead).toContain('76.2 mm (3.0000 in)');
  });
});

describe('measure vibration', () => {
  const measure = (...argv: string[]) => run(folder(), ['measure', ...argv]);
  it('answers in words and in JSON, and knows itself by its flags', async () => {
    const flags = ['--felt', '1800 rpm', '--frequency', '60 Hz', '--when', 'load'];
    const { code, out } = await measure('vibration', ...flags);
    expect(code).toBe(0);
    expect(out).toMatch(/^Look first at joint angles/);
    expect(out).toContain('next: Lay an inclinometer');
    expect(out).toContain('retention loop');
    const json = JSON.parse((await measure(...flags, '--json')).out) as {
      subject: string;
      result: { suspects: { id: string }[] };
    };
    expect(json.subject).toBe('vibration');
    expect(json.result.suspects[0]?.id).toBe('angle');
  });

  it('refuses a flag that belongs elsewhere', async () => {
    const { code, err } = await measure('vibration', '--felt', '1800', '--bore', '60');
    expect(code).toBe(2);
    expect(err).toContain('--bore does not belong to a vibration');
  });
});
