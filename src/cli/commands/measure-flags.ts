/** Flags of `measure`, by the subject they belong to. The list of subjects stands here and nowhere else. */
import { instruments } from '../../core.ts';

export const subjects = [
  'circle',
  'pattern',
  'register',
  'ring',
  'runout',
  'thread',
  'balance',
  'sensor',
  'vibration',
] as const;
export type Subject = (typeof subjects)[number];

const text = { type: 'string', requiresArg: true } as const;

/** Every flag, by what it belongs to. Readings of one size are parted by commas. */
export const measureFlags = {
  holes: { ...text, describe: 'circle, pattern: how many holes' },
  span: { ...text, describe: 'circle: which two holes: neighbours, skip_one, farthest, or how many positions apart' },
  over: { ...text, describe: 'circle: readings over the outside (far edges) of the two holes, or of bolts in them' },
  between: { ...text, describe: 'circle: readings between them (near edges); with --over the hole size cancels' },
  centres: { ...text, describe: 'circle: readings between their centres' },
  chord: {
    ...text,
    describe: 'more chords, repeatable. circle: "skip_one over 101.2,101.25"; pattern: "1-3 over 101.2"',
  },
  hole: { ...text, describe: 'circle, pattern: diameter of the holes, or of the bolts measured over' },
  at: { ...text, nargs: 1, describe: 'pattern: a hole at x,y; repeatable' },
  rectangle: { ...text, describe: 'pattern: two spacings of four holes, 58x48' },
  diagonal: { ...text, describe: 'pattern: diagonal of the rectangle, held against the spacings' },
  centre: { ...text, nargs: 1, describe: "pattern: x,y of the register's centre in the same coordinates" },
  doubt: { ...text, describe: 'pattern: how well each coordinate is known (0.05 mm)' },
  bore: { ...text, describe: 'register that goes into the face: readings across it' },
  spigot: { ...text, describe: 'register that stands out of the face: readings across it' },
  directions: { ...text, nargs: 1, describe: 'register: direction of each reading, degrees; tells where it is oval' },
  depth: { ...text, describe: 'register: how deep it is, or how far it stands out' },
  jaw: { ...text, describe: "register: width of the flats on the caliper's small jaws (0.3 mm)" },
  rim: {
    ...text,
    nargs: 1,
    describe:
      'runout: dial readings around rim or register, counter-clockwise from the x axis; behind them +-0.002 where a dial is that good',
  },
  face: { ...text, nargs: 1, describe: 'runout: dial readings around the face' },
  angles: { ...text, nargs: 1, describe: 'runout: angle of each reading when the steps are not equal' },
  radius: { ...text, describe: 'runout: how far from the axis the face was read; balance: where the weight sits' },
  diameter: { ...text, describe: 'thread: over the crests of the screw' },
  pitch: { ...text, describe: 'thread: pitch' },
  tpi: { ...text, describe: 'thread: threads per inch' },
  ten: { ...text, describe: 'thread: length over ten pitches' },
  ring: { ...text, describe: 'ring: marked size of the smallest printed ring that went on' },
  plug: { ...text, describe: 'ring: marked size of the largest printed plug that went in' },
  step: { ...text, describe: 'ring: from one marked size to the next (0.1 mm)' },
  trusted: { ...text, describe: 'ring: a size trusted more than the printer; learns the printer instead' },
  allowance: { ...text, describe: 'ring: print.registers the gauges were made with (0.3 mm)' },
  tapped: { type: 'boolean', describe: 'thread: --diameter was read across the crests inside a tapped hole' },
  first: {
    ...text,
    nargs: 1,
    describe: 'balance: vibration as found, "4.2 at 130" (phase in degrees), or 4.2 without phase',
  },
  trial: { ...text, nargs: 1, describe: 'balance: trial weight, "10 g at 90"; angle from the mark, counter-clockwise' },
  with: { ...text, nargs: 1, describe: 'balance: vibration with the trial weight on' },
  runs: { ...text, nargs: 1, describe: 'balance: place of the weight and reading there, "0: 7.5, 120: 8.7, 240: 1.6"' },
  sense: { ...text, describe: 'balance: same or opposite: does a weight moved on counter-clockwise raise the phase' },
  check: { ...text, nargs: 1, describe: 'balance: vibration with the correction on; tells what to add' },
  fitted: { ...text, describe: 'balance: what was on for --check, "8 g at 300", when not what was asked for' },
  clamp: { ...text, describe: 'balance: what the head of each of two band clamps weighs, "14 g"' },
  scatter: { ...text, describe: 'balance: how well a reading repeats (5 %)' },
  weight: { ...text, describe: 'balance: mass that this end of the shaft carries, kg; for the first trial weight' },
  speed: { ...text, describe: 'balance: speed of the runs' },
  duty: { ...text, describe: 'balance: highest speed in use; caps the runs' },
  critical: { ...text, describe: 'balance, vibration: lowest critical speed of the shaft; caps the runs' },
  felt: {
    ...text,
    describe: 'vibration: speed it is felt at, "1800 rpm" of the shaft, "2600 rpm engine", "80 to 90 km/h"',
  },
  frequency: { ...text, describe: 'vibration: how often it shakes, "60 Hz" or "60 +-2 Hz"' },
  order: { ...text, describe: 'vibration: shakes for one turn of the shaft, instead of --frequency' },
  when: { ...text, describe: 'vibration: load, coast, neutral, always or standing' },
  higher: { ...text, describe: 'vibration: grows or fades a little above that speed' },
  tyre: { ...text, describe: 'vibration: size on the wall, 205/65R16, or the rolling radius' },
  axle: { ...text, describe: 'vibration: shaft turns for one turn of the wheels' },
  gear: { ...text, describe: 'vibration: engine turns for one turn of the shaft' },
  cylinders: { ...text, describe: 'vibration: of the engine' },
  resistance: { ...text, describe: 'sensor: between two leads, unplugged: "1100 ohm", or open' },
  polarity: { ...text, describe: 'sensor: that reading with the meter swapped: same or differs' },
  supply: { ...text, describe: 'sensor: none (gives volts of its own) or needed' },
  output: { ...text, describe: 'sensor: grows (with speed), switches (two levels), two (two outputs), current' },
  current: { ...text, describe: 'sensor: both levels of its supply current, "7 mA, 14 mA"' },
  slow: { ...text, describe: 'sensor: yes or no: does it still switch when turned tooth by tooth' },
  turned: { ...text, describe: 'sensor: same or fades, when it is turned a quarter in its hole' },
  magnet: { ...text, describe: 'sensor: yes or no: does a paper clip stay on its tip' },
  leads: { ...text, describe: 'sensor: how many leads it has; tells little' },
  outside: { ...text, describe: "any: the flange's outside diameter; goes into the section and checks the rest" },
  instrument: { ...text, default: 'caliper', describe: `any: ${instruments.join(', ')}` },
  units: { ...text, default: 'mm', describe: 'any: what a bare number means, mm or in' },
  side: { ...text, default: 'driving', describe: 'any: the section to print, driving or driven' },
  json: { type: 'boolean', default: false, describe: 'JSON alone on standard output' },
} as const;

export const measureExamples = `Examples:
  flangewright measure circle --holes 5 --span skip_one --over 103.1,103.15 --between 87.05
  flangewright measure circle --holes 6 --chord "farthest over 92.1" --chord "neighbours over 50.1" --hole 8.1
  flangewright measure pattern holes.csv --hole 8.1        (x,y a line; or a DXF with circles or points)
  flangewright measure pattern --holes 6 --chord "1-2 centres 42" --chord "1-3 centres 72.75" ...
  flangewright measure register --bore 57.02,57.03,57.02 --directions 0,60,120 --depth 2.5
  flangewright measure ring --ring 62.1 --step 0.1         (add --trusted 62.03 to learn the printer)
  flangewright measure runout --rim 0,0.03,0.05,0.04,0.01,-0.01 --face 0,0.01,0.02,0.01 --radius 45
  flangewright measure thread --diameter 9.85 --ten 15.0
  flangewright measure balance --first "4.2 at 130" --trial "10 g at 90" --with "6.1 at 70" --clamp "14 g"
  flangewright measure balance --first 4.2 --trial "10 g" --runs "0: 7.5, 120: 8.7, 240: 1.6" --radius 45
  flangewright measure balance --weight "9 kg" --radius 45 --speed 1500     (a first trial weight)
  flangewright measure sensor --resistance "1100 ohm" --supply none
  flangewright measure sensor --current "7 mA, 14 mA" --turned fades
With no flags at a terminal it asks.`;

/** Flags that go with any subject, or tell the subject. */
export const commonFlags = ['subject', 'file', 'outside', 'instrument', 'units', 'side', 'tapped'];

/** Flags of each subject alone. */
export const belongs: Readonly<Record<Subject, readonly string[]>> = {
  circle: ['holes', 'span', 'over', 'between', 'centres', 'hole'],
  pattern: ['holes', 'hole', 'rectangle', 'diagonal', 'centre', 'doubt'],
  register: ['bore', 'spigot', 'directions', 'depth', 'jaw'],
  ring: ['ring', 'plug', 'step', 'trusted', 'allowance'],
  runout: ['rim', 'face', 'angles', 'radius'],
  thread: ['diameter', 'pitch', 'tpi', 'ten'],
  balance: [
    ...['first', 'trial', 'with', 'runs', 'sense', 'check', 'fitted', 'clamp', 'scatter'],
    ...['radius', 'weight', 'speed', 'duty', 'critical'],
  ],
  sensor: ['resistance', 'polarity', 'supply', 'output', 'current', 'slow', 'turned', 'magnet', 'leads'],
  vibration: ['felt', 'frequency', 'order', 'when', 'higher', 'tyre', 'axle', 'gear', 'cylinders', 'critical'],
};
