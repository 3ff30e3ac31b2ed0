/** A small joint made by hand: invented demo data, an adapter between two flanges that were never meant to meet. */
import { faceView } from '../../src/drawing/face-view.ts';
import type { JointToDraw } from '../../src/drawing/joint-to-draw.ts';
import { sectionView } from '../../src/drawing/section-view.ts';
import { wheelView } from '../../src/drawing/wheel-view.ts';
import type { Joint } from '../../src/job/joint.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import type { Finding } from '../../src/model/finding.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { buildToneWheel, type ToneWheelSpec } from '../../src/parts/tone-wheel.ts';
import type { JointToReport } from '../../src/report/report-data.ts';
import { findMaterial } from '../../src/standards/materials.ts';

export const ring = (count: number, circle: number, from = 0): { x: number; y: number }[] =>
  Array.from({ length: count }, (_, i) => {
    const a = ((from + (360 * i) / count) * Math.PI) / 180;
    return { x: (circle / 2) * Math.cos(a), y: (circle / 2) * Math.sin(a) };
  });

export const adapterSpec: AdapterSpec = {
  id: 'adapter',
  name: 'demo adapter',
  material: { id: 'steel', name: 'steel', density: 0.00785 },
  thickness: 26,
  outside: 128,
  chamfer: 1,
  bore: 30,
  flats: null,
  registers: {
    driving: {
      gender: 'male',
      at: 'inner',
      diameter: 60,
      depth: 4,
      limits: { lower: 59.971, upper: 59.99, zone: 'g6' },
      chamfer: 1,
      undercut: { width: 1.5, depth: 0.5 },
    },
    driven: {
      gender: 'female',
      at: 'inner',
      diameter: 57,
      depth: 4,
      limits: { lower: 57, upper: 57.03, zone: 'H7' },
      chamfer: 0.5,
      undercut: null,
    },
  },
  clocking: 30,
  groups: [
    {
      id: 'driving-screws',
      side: 'driving',
      label: 'screws into the driving flange',
      positions: ring(6, 94),
      shape: {
        kind: 'passing',
        diameter: 11,
        headFace: 'driven',
        head: { kind: 'counterbore', diameter: 18, depth: 11 },
      },
    },
    {
      id: 'driven-screws',
      side: 'driven',
      label: 'driven flange screws',
      positions: ring(6, 101.5),
      shape: {
        kind: 'tapped',
        thread: 'M10x1.5',
        major: 10,
        tapDrill: 8.5,
        face: 'driven',
        threadDepth: 16,
        drillDepth: 20,
        pointAngle: 118,
      },
    },
  ],
  wheelSeat: null,
};

export const adapter = buildAdapter(adapterSpec);

export const wheelSpec: ToneWheelSpec = {
  id: 'wheel',
  name: 'demo wheel',
  material: { id: 'S355', name: 'mild steel', density: 0.00785 },
  thickness: 4,
  teeth: 60,
  missing: 2,
  outside: 176,
  root: 166,
  ratio: 0.5,
  flanks: 'straight',
  rootRadius: 0.6,
  tipBreak: 0.3,
  bore: 116,
  screwHoles: { diameter: 5.5, positions: ring(6, 140, 15) },
  toothAngle: 0,
  kerf: 0,
};

export const wheel = buildToneWheel(wheelSpec);

const aluminium = findMaterial('6061-T6');
if (!aluminium.ok) throw new Error('the demo material is missing from the table');

const noMass = {
  volume: 0,
  mass: 0,
  centre: [0, 0, 0] as const,
  inertia: { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 },
};

/** The demo joint, as far as reports read it. */
export const joint: JointToReport = {
  job: {
    title: 'Demo: orchard truck, drive unit to rear axle',
    units: 'mm',
    adapter: { driving: {}, driven: { face_friction: 0.2 } },
  },
  driving: { material: '1045' },
  driven: { material: null },
  adapterSpec,
  wheelSpec,
  adapterMaterial: aluminium.value,
  adapterMass: { ...noMass, volume: 280000, mass: 756 },
  wheel,
  wheelMass: { ...noMass, volume: 45000, mass: 353.2 },
  screws: [
    {
      id: 'driving-screws',
      side: 'driving',
      label: 'screws into the drive unit flange',
      fastening: 'into_flange',
      count: 6,
      thread: 'M10',
      major: 10,
      pitch: 1.5,
      class: '12.9',
      head: { kind: 'socket', diameter: 16, height: 10, standard: 'ISO 4762' },
      washer: null,
      nut: null,
      positions: ring(6, 94),
      headZ: 15,
      points: -1,
      seat: 'sunk',
      length: 25,
      grip: 15,
      tightening: {
        torque: 71,
        preload: 43.4,
        leastPreload: 21.7,
        friction: 0.12,
        note: 'torque wrench, lightly oiled',
      },
      engagement: { has: 10, needs: 10, rule: '1 x diameter in steel', memory: false },
      lengths: { least: 25, most: 27, mostWhy: 'end of the thread' },
    },
    {
      id: 'driven-screws',
      side: 'driven',
      label: 'screws through the rear axle flange',
      fastening: 'into_adapter',
      count: 6,
      thread: 'M10',
      major: 10,
      pitch: 1.5,
      class: '10.9',
      head: { kind: 'hex', diameter: 17.77, height: 6.4, standard: 'ISO 4017' },
      washer: { outside: 20, thickness: 2 },
      nut: null,
      positions: ring(6, 101.5, 30),
      headZ: 40.2,
      points: -1,
      seat: 'outside',
      length: 30,
      grip: 14.2,
      tightening: {
        torque: 71,
        preload: 43.4,
        leastPreload: 21.7,
        friction: 0.12,
        note: 'torque wrench, lightly oiled',
      },
      engagement: { has: 15.8, needs: 15, rule: '1.5 x diameter in aluminium', memory: true },
      lengths: { least: 30, most: 34, mostWhy: 'bottom of the hole' },
    },
  ],
  clocking: { mode: 'auto', angle: 30, web: 6.52, best: { angle: 30, web: 6.52 } },
  thickness: {
    mode: 'auto',
    thickness: 26,
    least: 25.5,
    demands: [
      { what: 'thread engagement and drill point', side: 'driven', least: 25.5 },
      { what: 'web under heads', side: 'driving', least: 21 },
    ],
  },
  turnOver: { tir: 0.03, from: 'default' },
  assumptions: [
    {
      path: 'driven.register.depth',
      value: '3.5 mm',
      from: 'preset demo-companion, from memory',
      memory: true,
    },
    { path: 'duty.grade', value: 'G16', from: 'default', memory: false },
  ],
};

/** The same joint, as far as pictures read it. */
export const toDraw: JointToDraw = {
  title: joint.job.title,
  units: 'mm',
  adapter,
  thickness: 26,
  clocking: 30,
  driving: {
    name: 'drive unit flange',
    outside: 120,
    thickness: 12,
    register: { gender: 'female', at: 'inner', diameter: 60, depth: 4.5 },
    bore: 24,
    holes: ring(6, 94).map((p) => ({ ...p, diameter: 10, major: 10, depth: null })),
  },
  driven: {
    name: 'rear axle flange',
    outside: 122,
    thickness: null,
    register: { gender: 'male', at: 'inner', diameter: 57, depth: 3.5 },
    bore: null,
    holes: ring(6, 101.5, 30).map((p) => ({ ...p, diameter: 10.5, major: null, depth: null })),
  },
  screws: joint.screws,
  wheel: { part: wheel, z: 6 },
  // Recess 60.000 to 60.030 over spigot 59.971 to 59.990; recess 57.000 to 57.030 over spigot 56.981 to 57.010.
  clearances: { driving: { least: 0.01, most: 0.059 }, driven: { least: -0.01, most: 0.049 } },
};

const face = (from: 'driving' | 'driven'): Drawing =>
  faceView({ id: 'demo', adapter, from, clocking: 30, mate: toDraw[from].outside, units: 'mm' });

/** All four pictures of the demo joint. */
export const pictures: readonly Drawing[] = [
  sectionView(toDraw, 'demo'),
  face('driving'),
  face('driven'),
  wheelView({
    id: 'demo',
    wheel,
    teeth: 60,
    missing: 2,
    outside: 176,
    root: 166,
    toothAngle: 0,
    gap: 1,
    units: 'mm',
  }),
];

const finding = (
  code: string,
  verdict: Finding['verdict'],
  numbers: [number, number, number] | null,
  more: Partial<Finding> = {},
): Finding => ({
  code,
  feature: 'driven-screws',
  title: code.replaceAll('-', ' '),
  verdict,
  value: numbers?.[0] ?? null,
  limit: numbers?.[1] ?? null,
  margin: numbers?.[2] ?? null,
  unit: numbers ? 'mm' : '',
  why: `Why ${code.replaceAll('-', ' ')} matters, in one sentence.`,
  remedy: verdict === 'pass' ? '' : `Cure for ${code.replaceAll('-', ' ')}.`,
  source: 'common practice',
  ...more,
});

/** One finding of each kind and a few more, in no order. */
export const findings: readonly Finding[] = [
  finding('web-between-holes', 'pass', [6.52, 2, 4.52]),
  finding('register-centres', 'caution', [0.13, 0.1, -0.03], { feature: 'driven-register', unit: 'mm' }),
  finding('joint-strength', 'not assessed', null, { feature: 'adapter' }),
  finding('thread-engagement', 'fail', [12, 15, -3], {
    why: 'Engaged thread of the screws in the adapter. Too little thread strips before the screw breaks.',
    remedy: 'Make the adapter 3 mm thicker, or use screws 5 mm longer.',
    source: 'common practice, from memory',
  }),
  finding('wall-to-rim', 'pass', [8.25, 5, 3.25]),
  finding('wheel-magnetic', 'pass', null, { feature: 'wheel' }),
];

/** A resolved joint is what reports read; this line does not compile when it no longer is. */
export const fits = (whole: Joint): JointToReport => whole;
