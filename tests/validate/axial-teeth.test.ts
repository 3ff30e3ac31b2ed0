/** Open teeth read from the side: what the sensor sees at half of their height, by hand and by counting on the outline itself. */
import { describe, expect, it } from 'vitest';
import { wheelView } from '../../src/drawing/wheel-view.ts';
import { signalToDraw } from '../../src/products/signal-to-draw.ts';
import { studySignal } from '../../src/rotor/signal-study.ts';
import { findingOf, judge, type Patch } from './help.ts';

/* 36 teeth from 174 to 190, parallel flanks, 0.4 of the pitch at the tips: the sensor looks at 182. */
const base: Patch = {
  wheel: { teeth: 36, ratio: 0.4, outside: 190, height: 8, root_radius: 1, tooth: 10, set_true: 0.2, flatness: 0 },
  sensor: { kind: 'hall', direction: 'axial', gap: 1, float: 0.2, pole: 2 },
  sheet: { tolerance: 0.001 },
};
const on = (wheel: Patch = {}, sensor: Patch = {}): readonly Patch[] => [base, { wheel, sensor }];
function studied(wheel: Patch = {}, sensor: Patch = {}) {
  const answer = studySignal(judge(...on(wheel, sensor)).joint);
  if (!answer.ok) throw new Error(answer.why);
  return answer.study;
}
const degrees = Math.PI / 180;

/** Angles at which the corners' polygon, its flanks straight, goes in and out through a circle: degrees from tooth 1, sorted. */
function crossings(wheel: Patch, radius: number): number[] {
  const { joint } = judge(...on({ flanks: 'straight', root_radius: 0, ...wheel }));
  const outline = joint.wheel?.outside;
  if (outline?.kind !== 'path') throw new Error('a path is needed');
  const { vertices } = outline;
  return vertices
    .flatMap((a, i) => {
      const b = vertices[(i + 1) % vertices.length] as typeof a;
      const [ra, rb] = [Math.hypot(a.x, a.y), Math.hypot(b.x, b.y)];
      if (ra < radius === rb < radius) return [];
      // Where the straight flank meets the circle: |a + s (b - a)| = radius.
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const [p, q, c] = [dx * dx + dy * dy, a.x * dx + a.y * dy, ra * ra - radius * radius];
      const roots = [1, -1].map((sign) => (-q + sign * Math.sqrt(q * q - p * c)) / p);
      const s = roots.find((root) => root >= 0 && root <= 1) as number;
      return [(((Math.atan2(a.y + s * dy, a.x + s * dx) / degrees - 10) % 360) + 360) % 360];
    })
    .sort((a, b) => a - b);
}

describe('teeth and valleys at half of their height', () => {
  it.each([{}, { missing: 2 }, { wide: 2 }, { ratio: 0.25, extra: 1 }])(
    '%o: sheet under the sensor just where the outline says, and through a valley its other face',
    (mark) => {
      const { steelBelow, pulses, present } = studied({ root_radius: 0, ...mark });
      const edges = crossings(mark, 91);
      expect(edges).toHaveLength(2 * present);
      expect(pulses).toBe(present);
      const inside = (angle: number) => edges.filter((edge) => edge <= angle).length % 2 === 0;
      for (let at = 0.013; at < 360; at += 0.1) {
        if (edges.some((edge) => Math.abs(edge - at) < 0.002)) continue;
        // What has passed the sensor lies behind it.
        expect(steelBelow(-at * degrees, 1), `${at}`).toBeCloseTo(inside(at) ? 1 : 4, 9);
      }
    },
  );

  it('a tooth ends at asin(95 sin 2 / 91): parallel flanks, told where the sensor looks', () => {
    const { steelBelow, tip } = studied();
    expect(tip).toBe(91);
    const edge = Math.asin((95 * Math.sin(2 * degrees)) / 91);
    expect(steelBelow(edge - 1e-5, 1)).toBe(1);
    expect(steelBelow(edge + 1e-5, 1)).toBeCloseTo(4, 12);
  });

  it('the output is on for a tooth of its pitch there, seen by a small face at a small gap', () => {
    const share = (2 * Math.asin((95 * Math.sin(2 * degrees)) / 91)) / (10 * degrees);
    const { readings } = studied({}, { gap: 0.3, pole: 0.3 });
    expect(Math.abs((readings?.duty.mean ?? 0) - share)).toBeLessThan(0.02);
  });
});

describe('times and swing', () => {
  it('off centre by e it is early and late by e / 91, whatever the gap, and nothing else', () => {
    for (const gap of [0.6, 1.6]) {
      const { readings, setting, expected } = studied({ set_true: 0.4 }, { gap });
      // Times shift by (e / R) sin turn; over one pitch p that is (2 e / R) sin(p / 2) / p of a period.
      const ripple = ((2 * setting.eccentricity) / 91) * (Math.sin(5 * degrees) / (10 * degrees));
      expect(setting.eccentricity).toBeGreaterThanOrEqual(0.2);
      expect((readings?.onceATurn ?? 0) / ripple).toBeCloseTo(1, 1);
      expect(expected.runout / ripple).toBeCloseTo(1, 2);
    }
  });

  it('n valleys filled: the period of a switch is n + 1 long, those of a coil 1 + n / 2', () => {
    const hall = studied({ wide: 2 }, { gap: 0.6, pole: 0.3 }).readings?.markRatios ?? [];
    expect(hall).toHaveLength(1);
    expect(Math.abs((hall[0] ?? 0) - 3)).toBeLessThan(0.05);
    const coil = studied({ wide: 2 }, { kind: 'coil', gap: 0.6 }).readings?.markRatios ?? [];
    expect(coil).toHaveLength(2);
    for (const ratio of coil) expect(Math.abs(ratio - 2)).toBeLessThan(0.03);
  });

  it('sheet that is not flat moves its face by half of that, as in the sum of the gap', () => {
    const wobble = (flatness: number) => studied({ flatness }).face?.wobble ?? 0;
    expect(wobble(0.5) - wobble(0.1)).toBeCloseTo(0.2, 9);
    // The check looks where the face comes nearest, at the tips; a shaft without float.
    const { value } = findingOf(
      judge(...on({ flatness: 0.5 }, { float: 0, gap_range: { least: 0.1, most: 3 } })),
      'sensor-gap-high',
    );
    const atTips = 95 / 91;
    const lean = wobble(0.5) - 0.25;
    expect(1 - (value ?? 0)).toBeCloseTo(0.25 + lean * atTips, 6);
  });

  it('low teeth leave less of the swing: hardly any gap and a face twice as high as they leave half', () => {
    const low = findingOf(judge(...on({ height: 4 }, { gap: 0.05, pole: 8 })), 'signal-tooth-height');
    expect(low.value).toBeCloseTo(50, 0);
    expect(low.verdict).not.toBe('pass');
    expect(low.why).toContain('beyond the tips nothing');
    expect(low.remedy).toContain('Make the teeth higher (wheel.height)');
    expect(findingOf(judge(...on()), 'signal-tooth-height').verdict).toBe('pass');
  });
});

describe('words and pictures', () => {
  it('speak of teeth and valleys, along the axis', () => {
    const { joint } = judge(...on());
    const drawn = signalToDraw(joint);
    expect(drawn?.isBars).toBe(false);
    expect(drawn?.words.join(' ')).toContain('The height of the teeth leaves');
    expect(drawn?.words.join(' ')).toContain('through a valley');
    expect(drawn?.words.join(' ')).toContain('nearest at tooth 1');
    expect(drawn?.words.join(' ')).not.toMatch(/bar|window/);
    expect(findingOf(judge(...on()), 'signal-pulses').why).toContain('36 teeth make 36 pulses');
  });

  it('the wheel is drawn with the face over a tooth at half of its height, not before the tips', () => {
    const { joint } = judge(...on());
    if (!joint.wheel || !joint.wheelSpec) throw new Error('no wheel');
    const { teeth, missing, outside, root, toothAngle } = joint.wheelSpec;
    const input = {
      id: 'w',
      wheel: joint.wheel,
      teeth,
      missing,
      outside,
      root,
      toothAngle,
      gap: 1,
      units: 'mm' as const,
    };
    const faces = (axial?: { readonly pole: number | null }) => {
      const { shapes } = wheelView({ ...input, axial });
      return {
        round: shapes.flatMap((shape) => (shape.kind === 'circle' && shape.fill === 'screw' ? [shape] : [])),
        body: shapes.filter((shape) => shape.kind === 'path' && shape.fill === 'screw'),
      };
    };
    const { round, body } = faces({ pole: 2 });
    expect(body).toEqual([]);
    expect(round).toHaveLength(1);
    expect(round[0]?.r).toBe(1);
    expect(Math.hypot(round[0]?.centre.x ?? 0, round[0]?.centre.y ?? 0)).toBeCloseTo(91, 9);
    expect(faces().body).toHaveLength(1);
  });
});
