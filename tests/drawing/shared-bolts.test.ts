/** A joint whose bolts go through both flanges, with registers round the rim on both faces and no bore. Invented demo data. */
import { describe, expect, it } from 'vitest';
import { faceView } from '../../src/drawing/face-view.ts';
import type { JointToDraw } from '../../src/drawing/joint-to-draw.ts';
import { adapterPattern } from '../../src/drawing/paper.ts';
import { featureText } from '../../src/drawing/register-text.ts';
import { sectionView } from '../../src/drawing/section-view.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec, HoleGroupSpec } from '../../src/parts/adapter-spec.ts';
import { adapterSpec, adapter as innerAdapter, ring, toDraw } from '../report/fixture.ts';

const [group] = adapterSpec.groups as [HoleGroupSpec];
const bolts: HoleGroupSpec = {
  ...group,
  shape: { ...group.shape, head: { kind: 'surface' } } as HoleGroupSpec['shape'],
};
const atRim = { at: 'rim', depth: 3, undercut: null, chamfer: 0 } as const;
const spec: AdapterSpec = {
  ...adapterSpec,
  bore: null,
  groups: [bolts],
  registers: {
    driving: { ...atRim, gender: 'female', diameter: 112, limits: { lower: 112, upper: 112.035, zone: 'H7' } },
    driven: { ...atRim, gender: 'male', diameter: 116, limits: { lower: 115.978, upper: 116, zone: 'h6' } },
  },
};
const adapter = buildAdapter(spec);
const face = (from: 'driving' | 'driven', part = adapter): Drawing =>
  faceView({ id: 'x', adapter: part, from, clocking: 30, mate: null, units: 'mm' });
const texts = (d: Drawing): string[] => d.shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : []));
const pensAt = (d: Drawing, r: number): string[] =>
  d.shapes.flatMap((s) =>
    s.kind === 'circle' && Math.hypot(s.centre.x, s.centre.y) < 1e-9 && Math.abs(s.r - r) < 1e-6 ? [s.pen] : [],
  );

describe('a face over a blind recess', () => {
  it('shows a blind ring solid from its own side and dashed from the other', () => {
    expect(pensAt(face('driving'), 56)).toEqual(['outline']);
    expect(pensAt(face('driven'), 56)).toEqual(['hidden']);
  });

  it('does the same for a blind recess within the bolts, and keeps it off the pattern to punch', () => {
    const { driving, driven } = adapterSpec.registers;
    const blind = buildAdapter({ ...adapterSpec, bore: null, registers: { driving: driven, driven: driving } });
    expect(pensAt(face('driving', blind), 28.5)).toEqual(['outline']);
    expect(pensAt(face('driven', blind), 28.5)).toEqual(['hidden']);
    const onPaper = (from: 'driving' | 'driven') => pensAt(adapterPattern(blind, from, 30, 'mm').drawing, 28.5);
    expect(onPaper('driving')).toEqual(['outline']);
    expect(onPaper('driven')).toEqual([]);
  });
});

describe('bolts through both flanges', () => {
  it('leaves out a clocking that points at no hole, and keeps it where each flange has holes', () => {
    for (const from of ['driving', 'driven'] as const) {
      const shared = face(from);
      expect(texts(shared).join()).not.toMatch(/clocking|30\.00/);
      expect(shared.shapes.some((s) => s.kind === 'arc' && s.r > 64)).toBe(false);
      expect(shared.description).toContain('Both flanges share the bolt holes.');
      expect(texts(face(from, innerAdapter))).toContain('30.00\u00b0');
    }
  });

  it('draws a screw on both sides of the section, and names the set once', () => {
    const shared: JointToDraw = {
      ...toDraw,
      adapter,
      screws: toDraw.screws.slice(0, 1).map((g) => ({ ...g, label: 'through bolts', positions: ring(6, 94) })),
    };
    const d = sectionView(shared, 'x');
    const sides = d.shapes.flatMap((s) =>
      s.kind === 'path' && s.fill === 'screw' ? [Math.sign(s.loops[0]?.[0]?.x ?? 0)] : [],
    );
    expect(new Set(sides)).toEqual(new Set([1, -1]));
    expect(texts(d).filter((t) => t === 'through bolts').length).toBe(1);
    expect(texts(d).filter((t) => t.startsWith('6 x M10')).length).toBe(1);
    expect(texts(d)).toContain(
      'left half: cut through a bolt hole at 180.00\u00b0; right half: cut through a bolt hole at 0.00\u00b0; sizes in mm',
    );
  });
});

describe('registers in words', () => {
  const said = (part: typeof adapter) =>
    part.features.filter((f) => f.id.endsWith('register')).map((f) => featureText(part, f));

  it('calls a register round the bolts a ring or a step, one within them a spigot or a recess', () => {
    expect(said(adapter)).toEqual(['driving register ring', 'driven register step']);
    expect(said(innerAdapter)).toEqual(['driving register spigot', 'driven register recess']);
  });

  it('uses those words on the faces and in the section, and leads to the register itself', () => {
    expect(texts(face('driving'))).toContain('driving register ring');
    expect(texts(face('driven'))).toContain('driven register step');
    const d = sectionView({ ...toDraw, adapter }, 'x');
    expect(texts(d)).toContain('\u00d8112.00 H7, driving register ring');
    // The ring stands 3 mm below z = 0, the step goes 3 mm back from z = 26: each leader starts halfway along its register.
    const dots = d.shapes.flatMap((s) =>
      s.kind === 'circle' && s.feature?.endsWith('register') ? [[s.centre.x, s.centre.y]] : [],
    );
    expect(dots).toContainEqual([56, -1.5]);
    expect(dots).toContainEqual([-58, 24.5]);
  });
});
