/** The files of the signal, read back by readers that know nothing of how they were made: Python's wave module and a split by commas. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Joint } from '../../src/core.ts';
import { makeFiles } from '../../src/products/make.ts';
import type { MadeFile } from '../../src/products/product.ts';
import { reportData } from '../../src/report/report-data.ts';
import { writeWav } from '../../src/write/wav.ts';
import { judge, type Patch } from '../validate/help.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'signal-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const script = `
import sys, json, wave, struct
with wave.open(sys.argv[1], 'rb') as w:
    n = w.getnframes()
    s = struct.unpack('<%dh' % n, w.readframes(n))
    about = dict(channels=w.getnchannels(), width=w.getsampwidth(), rate=w.getframerate(), frames=n)
# A pulse: up past zero after having been below minus a 40th of the loudest so far to come by then; counted with the time of the zero.
level = float(sys.argv[2])
low, ups = s[0] < 0, []
for i in range(1, n):
    if s[i] < -level: low = True
    if low and s[i] > level:
        ups.append(i); low = False
about.update(ups=len(ups), first=ups[:40], last=ups[-40:], most=max(s), least=min(s))
print(json.dumps(about))
`;

interface Heard {
  readonly channels: number;
  readonly width: number;
  readonly rate: number;
  readonly frames: number;
  readonly ups: number;
  readonly first: readonly number[];
  readonly last: readonly number[];
  readonly most: number;
  readonly least: number;
}

function heard(bytes: Uint8Array, level: number): Heard {
  const path = join(folder, 'sound.wav');
  writeFileSync(path, bytes);
  const run = spawnSync('python3', ['-c', script, path, String(level)], { encoding: 'utf8' });
  if (run.error) throw new Error(`python3 is needed to hear the sound: ${run.error.message}`);
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as Heard;
}

async function filesOf(...patches: readonly Patch[]): Promise<{ joint: Joint; files: readonly MadeFile[] }> {
  const { joint, findings } = judge(...patches);
  const made = await makeFiles(joint, findings, { base: 'a', jobName: 'a.job.yaml', only: ['signal'], force: false });
  return { joint, files: made.files.filter(({ kind }) => kind === 'signal') };
}

const bytesOf = (files: readonly MadeFile[], end: string): Uint8Array => {
  const file = files.find(({ name }) => name === `a-${end}`);
  if (!file) throw new Error(`no ${end} among ${files.map(({ name }) => name).join(', ')}`);
  return file.bytes;
};
const textOf = (files: readonly MadeFile[], end: string) => new TextDecoder().decode(bytesOf(files, end));
const rowsOf = (text: string): Record<string, number>[] => {
  const [head, ...lines] = text.trim().split('\n');
  const names = (head ?? '').split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i], Number(cell)])));
};

const coil: Patch = { sensor: { kind: 'coil', gap: '0.8 mm', crawl: '60 rpm' } };

describe('a WAVE file', () => {
  it('has the header of the published format, byte by byte', () => {
    const view = new DataView(writeWav([0, 0.5, -1, 2], 48_000).buffer);
    const tag = (at: number) => String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
    // 44 bytes and 2 a sample; the RIFF length leaves out its own first 8.
    expect(view.byteLength).toBe(52);
    expect([tag(0), tag(8), tag(12), tag(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect([4, 16, 24, 28, 40].map((at) => view.getUint32(at, true))).toEqual([44, 16, 48_000, 96_000, 8]);
    expect([20, 22, 32, 34].map((at) => view.getUint16(at, true))).toEqual([1, 1, 2, 16]);
    expect([44, 46, 48, 50].map((at) => view.getInt16(at, true))).toEqual([0, 16_384, -32_767, 32_767]);
  });

  it('refuses what is no number and no rate', () => {
    expect(() => writeWav([Number.NaN], 48_000)).toThrow(/not a number/);
    expect(() => writeWav([0], 0.5)).toThrow(/whole number/);
  });
});

describe('the sound', () => {
  it.each([
    ['a differential Hall', {}, 1],
    ['a single Hall with 36 teeth, 1 missing', { wheel: { teeth: 36, missing: 1 }, sensor: { kind: 'hall' } }, 1],
    ['a coil', coil, 0.015],
    ['a coil with 2 of 60 missing', { ...coil, wheel: { missing: 2 } }, 0.015],
  ] as const)('of %s holds teeth times turns pulses, by another reader', async (_, patch, share) => {
    const { joint, files } = await filesOf(patch);
    const note = textOf(files, 'signal.txt');
    const turns = Number(/, (\d+) turns,/.exec(note)?.[1]);
    const spec = joint.wheelSpec;
    if (!spec) throw new Error('a wheel is needed');
    const sound = heard(bytesOf(files, 'signal.wav'), share < 1 ? 26_000 * share : 5000);
    expect(sound).toMatchObject({ channels: 1, width: 2, rate: 48_000 });
    expect(sound.ups).toBe((spec.teeth - spec.missing) * turns);
    expect(sound.frames / 48_000).toBeGreaterThan(18);
    expect(sound.frames / 48_000).toBeLessThan(22);
    expect(sound.most).toBeLessThanOrEqual(Math.ceil(0.8 * 32_767));
  });

  it('starts at the frequency of crawl and ends at that of top speed', async () => {
    const { files } = await filesOf({ sensor: { crawl: '100 rpm' } });
    const { first, last } = heard(bytesOf(files, 'signal.wav'), 5000);
    const hertz = (ups: readonly number[]) =>
      (48_000 * (ups.length - 1)) / ((ups.at(-1) as number) - (ups[0] as number));
    // 60 teeth: as many hertz as rpm. The speed grows by 18 % a second, and 40 pulses take 0.4 s of it at first.
    expect(hertz(first)).toBeGreaterThan(100);
    expect(hertz(first)).toBeLessThan(107);
    expect(hertz(last) / 2600).toBeGreaterThan(0.99);
    expect(hertz(last) / 2600).toBeLessThan(1.001);
  });

  it('stops where a sound card gives up, and says so', async () => {
    // 400 teeth at 6000 rpm: 40 kHz, above 0.4 of 48 kHz.
    const { files } = await filesOf({
      duty: { speed: '6000 rpm' },
      wheel: { teeth: 400, outside: 400, ratio: 0.5, root_radius: 0.2 },
      sensor: { kind: 'hall', gap: '0.3 mm' },
    });
    expect(textOf(files, 'signal.txt')).toMatch(/6000 rpm \(40000 Hz\) is left out/);
    const { last } = heard(bytesOf(files, 'signal.wav'), 5000);
    const mean = ((last.at(-1) as number) - (last[0] as number)) / (last.length - 1);
    expect(48_000 / mean).toBeLessThan(19_300);
    expect(48_000 / mean).toBeGreaterThan(18_500);
  });

  it('grows with the speed for a coil and stays as loud for a Hall', async () => {
    const loud = (bytes: Uint8Array, from: number, to: number) => {
      const view = new DataView(bytes.buffer, bytes.byteOffset);
      const count = (bytes.length - 44) / 2;
      let most = 0;
      for (let i = Math.floor(from * count); i < to * count; i++) {
        most = Math.max(most, Math.abs(view.getInt16(44 + 2 * i, true)));
      }
      return most;
    };
    const own = bytesOf((await filesOf(coil)).files, 'signal.wav');
    // 60 to 2600 rpm by an even factor: half way in time is the root of 60 x 2600 = 395 rpm.
    expect(loud(own, 0.47, 0.5) / loud(own, 0.97, 1)).toBeCloseTo(Math.sqrt(60 / 2600), 1);
    const hall = bytesOf((await filesOf({})).files, 'signal.wav');
    expect(loud(hall, 0, 0.05)).toBe(loud(hall, 0.4, 0.5));
  });

  it('is the same, byte for byte, a second time', async () => {
    const [a, b] = [await filesOf(coil), await filesOf(coil)];
    expect(a.files.map(({ name }) => name)).toEqual(
      ['signal.csv', 'signal-teeth.csv', 'signal-speeds.csv', 'signal.wav', 'signal.txt'].map((end) => `a-${end}`),
    );
    a.files.forEach((file, i) => {
      expect(Buffer.compare(Buffer.from(file.bytes), Buffer.from((b.files[i] as MadeFile).bytes))).toBe(0);
    });
  });
});

describe('the tables', () => {
  it('hold one turn: time by the speed, gap from tip to root, as many pulses as teeth', async () => {
    const { joint, files } = await filesOf(coil);
    const rows = rowsOf(textOf(files, 'signal.csv'));
    const [last] = rows.slice(-1);
    expect(last?.angle_deg).toBeGreaterThan(359.8);
    // 2600 rpm: a turn in 60 / 2600 s.
    expect((last?.time_s ?? 0) / (last?.angle_deg ?? 1)).toBeCloseTo(60 / 2600 / 360, 8);
    const gaps = rows.map(({ gap_mm: gap }) => gap as number);
    const spec = joint.wheelSpec;
    const height = ((spec?.outside ?? 0) - (spec?.root ?? 0)) / 2;
    expect(Math.max(...gaps) - Math.min(...gaps)).toBeGreaterThan(height);
    // The middle of the tips over a turn is the set gap: 0.8.
    expect((Math.min(...gaps) + Math.max(...gaps.filter((g) => g < 2))) / 2).toBeGreaterThan(0.7);
    const ups = rows.filter(({ output }, i) => output === 1 && rows[(i - 1 + rows.length) % rows.length]?.output === 0);
    expect(ups).toHaveLength(60);
    expect(Math.max(...rows.map(({ voltage }) => Math.abs(voltage as number)))).toBe(1);
  });

  it('tell each tooth: periods fill the turn, and speed and period are wrong the opposite way', async () => {
    const rows = rowsOf(textOf((await filesOf({})).files, 'signal-teeth.csv'));
    expect(rows).toHaveLength(60);
    expect(rows.reduce((sum, { period_deg: p }) => sum + (p as number), 0)).toBeCloseTo(360, 3);
    for (const { period_error_percent: p = 0, speed_error_percent: v = 0 } of rows) {
      expect((1 + p / 100) * (1 + v / 100)).toBeCloseTo(1, 5);
    }
  });

  it('leave the error open over missing teeth', async () => {
    const text = textOf((await filesOf({ wheel: { missing: 2 } })).files, 'signal-teeth.csv');
    expect(
      text
        .trim()
        .split('\n')
        .filter((line) => line.includes(',,')),
    ).toHaveLength(1);
  });

  it('tell each speed: teeth x rpm / 60', async () => {
    const rows = rowsOf(textOf((await filesOf({ sensor: { crawl: '30 rpm' } })).files, 'signal-speeds.csv'));
    expect(rows[0]).toMatchObject({ rpm: 30, frequency_hz: 30 });
    expect(rows.at(-1)).toMatchObject({ rpm: 2600, frequency_hz: 2600 });
    for (const { rpm = 0, frequency_hz: hertz = 0, period_ms: period = 0 } of rows) {
      expect(hertz).toBeCloseTo((60 * rpm) / 60, 6);
      expect(period * hertz).toBeCloseTo(1000, 2);
    }
  });
});

describe('when they are made', () => {
  it('only when asked, by --only or by the job', async () => {
    const kinds = async (patch: Patch) => {
      const { joint, findings } = judge(patch);
      const { files } = await makeFiles(joint, findings, { base: 'a', jobName: 'a', only: [], force: true });
      return files.map(({ kind }) => kind);
    };
    expect(await kinds({})).not.toContain('signal');
    expect(await kinds({ sensor: { signal: true } })).toContain('signal');
    expect((await filesOf({ sensor: undefined })).files).toEqual([]);
    expect((await filesOf({ wheel: undefined, sensor: undefined })).files).toEqual([]);
  }, 30_000);

  it('the key numbers tell the frequency: 60 teeth at 2600 rpm are 2600 Hz', () => {
    const line = (patch: Patch) => {
      const { joint, findings } = judge(patch);
      return reportData(joint, findings, null, '').keyNumbers.find(({ label }) => label === 'Signal');
    };
    expect(line({})?.value).toBe('2600 Hz at 2600 rpm');
    expect(line({ sensor: { crawl: '45 rpm' } })?.note).toContain('45 Hz at 45 rpm (crawl)');
    expect(line({ wheel: undefined, sensor: undefined })).toBeUndefined();
  });
});
