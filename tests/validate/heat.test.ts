/**
 * Registers cold and hot, by hand. Expansion: 6061 23.6e-6 /K and S355 12.0e-6 /K (reference tables; an open material card and handbook
 * values). dc = d (alpha recess - alpha spigot) dT: for 62 mm, 62 x 11.6e-6 = 0.000719 mm a degree. The reference pack's own worked example of the
 * formula (75 mm, 80 K, 0.0714 mm) is in tests/formulas/thermal-fit.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import type { Finding } from '../../src/model/finding.ts';

const nothing = { flanges: [], nearMisses: [] };

/** A steel spigot of 62 (good to 0.005) in the adapter's recess H7: 62.005 to 62.035, so 0 to 0.040 clearance at 20 degrees. */
function findings(material: string, temperature: string, flange = 'S355'): Finding[] {
  const text = `job: 1
duty: { speed: 900 rpm ${temperature} }
driving: { outside: 112, thickness: 14, material: "${flange}", register: { gender: male, diameter: { value: 62, instrument: micrometer }, depth: 4 }, holes: { count: 6, circle: 84, thread: M8, depth: 20 } }
driven: { outside: 138, thickness: 9, register: none, holes: { count: 4, circle: 120, diameter: 10.4 } }
adapter: { material: "${material}" }
`;
  const judged = judgeJob(text, 'heat.job.yaml', nothing);
  if (!judged.ok) throw new Error(judged.errors.map((error) => error.message).join('\n'));
  return judged.findings.filter((finding) => /^register-(binds|opens|cold-and-hot)$/.test(finding.code));
}

const only = (list: Finding[], code: string) => list.find((finding) => finding.code === code);

describe('an aluminium recess on a steel spigot', () => {
  it('opens when hot: 0.040 + 62 x 11.6e-6 x 80 = 0.0975 at 100 degrees, just inside 0.1', () => {
    const opens = only(findings('6061-T6', ', temperature: { cold: 20 degC, hot: 100 degC }'), 'register-opens');
    expect(opens).toMatchObject({ verdict: 'pass', limit: 0.1 });
    expect(opens?.value).toBeCloseTo(0.04 + 62 * 11.6e-6 * 80, 3);
  });

  it('is a caution at 110 degrees: 0.1047', () => {
    const opens = only(findings('6061-T6', ', temperature: { cold: 20 degC, hot: 110 degC }'), 'register-opens');
    expect(opens).toMatchObject({ verdict: 'caution' });
    expect(opens?.value).toBeCloseTo(0.04 + 62 * 11.6e-6 * 90, 3);
  });

  it('binds when cold: 0 - 62 x 11.6e-6 x 40 = -0.0288 at -20 degrees, more than a tap fit', () => {
    const binds = only(findings('6061-T6', ', temperature: { cold: -20 degC, hot: 60 degC }'), 'register-binds');
    expect(binds).toMatchObject({ verdict: 'fail', limit: 0 });
    expect(binds?.value).toBeCloseTo(-62 * 11.6e-6 * 40, 3);
    // Its cures: the other metal, or 0.029 of clearance on the bench.
    expect(binds?.remedy).toContain('adapter.material: S355');
    expect(binds?.remedy).toContain('adapter.driving.fit: { clearance: 0.029 mm }');
    const steel = only(findings('S355', ', temperature: { cold: -20 degC, hot: 60 degC }'), 'register-binds');
    expect(steel).toMatchObject({ verdict: 'pass' });
    expect(steel?.value).toBeCloseTo(0, 5);
  });

  it('is a caution where the tap fit is light: -0.0144 at 0 degrees', () => {
    const binds = only(findings('6061-T6', ', temperature: { cold: 0 degC, hot: 60 degC }'), 'register-binds');
    expect(binds).toMatchObject({ verdict: 'caution' });
  });

  it('takes Fahrenheit too: 212 degF is 100 degC', () => {
    const opens = only(findings('6061-T6', ', temperature: { cold: 68 degF, hot: 212 degF }'), 'register-opens');
    expect(opens?.value).toBeCloseTo(0.04 + 62 * 11.6e-6 * 80, 3);
  });

  it('fails far beyond: 0.31 at 400 degrees is out of range and refused', () => {
    expect(() => findings('6061-T6', ', temperature: { cold: 20 degC, hot: 400 degC }')).toThrow(/250/);
  });

  it('names temperatures that stand the wrong way round', () => {
    expect(() => findings('6061-T6', ', temperature: { cold: 50 degC, hot: 0 degC }')).toThrow(
      /warmer than the hottest/,
    );
  });

  it('is cured by the fit that its remedy names', () => {
    const cured = only(
      findings(
        '6061-T6", driving: { fit: { clearance: 0.029 mm } }, name: "A',
        ', temperature: { cold: -20 degC, hot: 60 degC }',
      ),
      'register-binds',
    );
    expect(cured).toMatchObject({ verdict: 'pass' });
  });

  it('that opens too far names the closer fit that does: 0.04 + 0.029 + 62 x 11.6e-6 x 60 = 0.1122, so 0.0122 less', () => {
    // The doubt of the spigot is 0.01 from end to end, the recess is made to IT6, 0.019 over 50 to 80 (ISO 286-1).
    const fitted = (clearance: number) =>
      only(
        findings(
          `6061-T6", driving: { fit: { clearance: ${clearance} mm } }, name: "A`,
          ', temperature: { cold: 20 degC, hot: 80 degC }',
        ),
        'register-opens',
      );
    const opens = fitted(0.04);
    expect(opens?.verdict).toBe('caution');
    expect(opens?.value).toBeCloseTo(0.069 + 62 * 11.6e-6 * 60, 3);
    expect(opens?.remedy).toContain('adapter.driving.fit: { clearance: 0.027 mm');
    expect(fitted(0.027)?.verdict).toBe('pass');
  });

  it('is not assessed without temperatures, and says what to give', () => {
    const [finding, ...rest] = findings('6061-T6', '');
    expect(rest).toEqual([]);
    expect(finding).toMatchObject({ verdict: 'not assessed', remedy: expect.stringContaining('duty.temperature') });
  });
});

it('says nothing of heat where both halves are steel and no temperature is given', () => {
  expect(findings('S355', '')).toEqual([]);
});
