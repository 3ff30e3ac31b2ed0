/** The picture of the unbalance: arrows that add up, circles to scale, a correction on the heavy side. */
import { describe, expect, it } from 'vitest';
import type { BalanceViewInput } from '../../src/drawing/balance-input.ts';
import { balanceScale } from '../../src/drawing/balance-plot.ts';
import { balanceView } from '../../src/drawing/balance-view.ts';
import type { Shape } from '../../src/model/drawing.ts';
import { balanceToDraw } from '../../src/products/balance-to-draw.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { findingOf, judge } from '../validate/help.ts';
import { expectApart, texts } from './shape-help.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const pull = (size: number, angle: number | null, doubt = 0) => ({
  what: `pull of ${size}`,
  worst: angle === null ? size : size + doubt,
  size,
  angle,
  doubt,
  feature: null,
});

/** 300 at 0 and 400 at 90 degrees: 500 at 53.13 degrees; 250 more may lie towards any side. */
const input: BalanceViewInput = {
  id: 'balance',
  pulls: [pull(400, 90), pull(300, 0), pull(250, null)],
  known: { size: 500, angle: (Math.atan2(4, 3) * 180) / Math.PI },
  loose: { worst: 250, likely: 250 },
  worst: 750,
  likely: Math.hypot(500, 250),
  limit: 1000,
  allowed: 'G 40 at 3000 rpm for 7.85 kg',
  verdict: 'pass',
  start: { number: 2, cure: 'a closer fit' },
  marks: [{ name: 'tooth 1', at: 0 }],
  corrections: [],
  notGiven: [],
  feature: 'body',
};

type Circle = Extract<Shape, { kind: 'circle' }>;
type Line = Extract<Shape, { kind: 'line' }>;
const circles = (shapes: readonly Shape[]) => shapes.filter((s): s is Circle => s.kind === 'circle');
const lines = (shapes: readonly Shape[], pen: Line['pen']) =>
  shapes.filter((s): s is Line => s.kind === 'line' && s.pen === pen);

describe('the picture of the unbalance', () => {
  const { shapes } = balanceView(input);
  const { whole, larger } = balanceScale(input);
  const allowed = circles(shapes).find(({ pen, fill, r }) => pen === 'mark' && fill === 'none' && r > 5);

  it('draws the sum where the arrows add up to', () => {
    expect(larger).toBeNull();
    const arrows = lines(shapes, 'outline').filter(({ from }) => from.x === allowed?.centre.x);
    expect(arrows).toHaveLength(2);
    const add = arrows.reduce((sum, { from, to }) => ({ x: sum.x + to.x - from.x, y: sum.y + to.y - from.y }), {
      x: 0,
      y: 0,
    });
    expect(add.x).toBeCloseTo(300 * whole, 9);
    expect(add.y).toBeCloseTo(400 * whole, 9);
    const [sum] = lines(shapes, 'mark');
    expect((sum?.to.x ?? 0) - (sum?.from.x ?? 0)).toBeCloseTo(add.x, 9);
    expect((sum?.to.y ?? 0) - (sum?.from.y ?? 0)).toBeCloseTo(add.y, 9);
  });

  it('draws what is allowed and what is loose to the same scale, and the margin between them', () => {
    expect(allowed?.r).toBeCloseTo(1000 * whole, 9);
    const loose = circles(shapes).find(({ fill, r }) => fill === 'good' && r > 5);
    expect(loose?.r).toBeCloseTo(250 * whole, 9);
    expect((loose?.centre.x ?? 0) - (allowed?.centre.x ?? 0)).toBeCloseTo(300 * whole, 9);
    const [margin] = lines(shapes, 'dimension');
    if (!margin) throw new Error('no margin is drawn');
    expect(Math.hypot(margin.to.x - margin.from.x, margin.to.y - margin.from.y)).toBeCloseTo(250 * whole, 9);
    expect(texts(shapes)).toContain('At worst 750 g.mm: 250 g.mm to spare.');
  });

  it('starts with the pull that it is told to, and says so where nothing is left to do', () => {
    // 300 of 750.
    expect(texts(shapes).join(' ')).toMatch(
      /Start with 2: pull of 300 gives 40\u00a0% of\s+it\. What helps: a closer fit\./,
    );
    const done = texts(balanceView({ ...input, start: null }).shapes).join(' ');
    expect(done).toContain('Nothing is left to do about any of these pulls.');
    expect(done).not.toContain('What helps');
  });

  it('draws small arrows larger beside the whole, and says how many times', () => {
    const few: BalanceViewInput = { ...input, pulls: [pull(710, null), pull(40, 90)], known: { size: 40, angle: 90 } };
    const scale = balanceScale(few);
    const drawn = balanceView(few).shapes;
    expect(lines(drawn, 'outline').map(({ from, to }) => to.y - from.y)).toContainEqual(
      expect.closeTo(40 * (scale.larger ?? 0), 9),
    );
    expect(texts(drawn)).toContain(`${Math.round((scale.larger ?? 0) / scale.whole)} times larger`);
  });

  it('is well-formed whatever the parts are called, and keeps its words apart', () => {
    const drawing = balanceView({ ...input, pulls: [{ ...pull(300, 0), what: '<script>&"\u0000' }, pull(9, null)] });
    expectApart(drawing);
    const svg = writeSvg(drawing);
    expect(badNumbers(svg)).toEqual([]);
    expect(parseXml(svg).some(({ tag }) => tag === 'script')).toBe(false);
  });
});

describe('the unbalance of a joint', () => {
  it('is held against m e of its grade: 9549.3 G / n micrometres (ISO 21940-11, as its published form says)', () => {
    const judged = judge();
    const drawn = balanceToDraw(judged.joint);
    const finding = findingOf(judged, 'joint-unbalance');
    if (!drawn) throw new Error('nothing pulls');
    const kilos = Number(/for ([\d.]+) kg/.exec(drawn.allowed)?.[1]);
    // The mass is told to 10 g.
    expect((drawn.limit ?? 0) / ((9549.3 * 40) / 2600)).toBeCloseTo(kilos, 1);
    expect(drawn.pulls.reduce((sum, { worst }) => sum + worst, 0)).toBeCloseTo(finding.value ?? 0, 4);
    expect(drawn.corrections).toEqual([]);
  });

  it('puts the correction of a wheel opposite its missing teeth, by symmetry', () => {
    // Places 58 and 59 of 60 are left out: the gap stands at -9 degrees, the heavy side at 171.
    const judged = judge({ wheel: { missing: 2 }, duty: { speed: '9000 rpm', grade: 'G16' } });
    expect(findingOf(judged, 'balance-wheel').verdict).toBe('fail');
    const drawn = balanceToDraw(judged.joint);
    const [correction] = drawn?.corrections ?? [];
    expect(correction?.at).toBeCloseTo(171, 6);
    expect(drawn?.marks.find(({ name }) => name.startsWith('middle of the gap'))?.at).toBeCloseTo(351, 9);
    expect(texts(balanceView(drawn as BalanceViewInput).shapes).join(' ')).toContain(
      'Correct the wheel at 171 degrees',
    );
  });
});
