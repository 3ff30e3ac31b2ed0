/** Questions of `measure` at a terminal: the same texts as behind the flags, one by one. */
import { chordAdvice } from '../../core.ts';
import type { Io } from '../io.ts';
import { subjects } from './measure-flags.ts';
import type { Typed } from './measure-typed.ts';

/** Ask; an empty answer means: not measured. */
type Ask = (question: string) => Promise<string | undefined>;

/** Ask for everything one subject needs. @returns what was answered, on top of the flags that were given */
export async function measureQuestions(io: Io, flags: Typed): Promise<Typed> {
  const ask: Ask = async (question) => {
    const answer = (await io.ask?.(`${question}: `))?.trim();
    return answer === '' ? undefined : answer;
  };
  io.out('Several readings of one size: part them with commas. An empty answer means not measured.\n');
  const subject =
    flags.texts.subject ??
    (await ask(`What was measured: ${subjects.slice(0, -1).join(', ')} or ${subjects[subjects.length - 1]}`)) ??
    'circle';
  const word = subject.toLowerCase();
  // A shaft is balanced where it hangs, a sensor lies on the bench: neither flange's section comes of it.
  const side =
    word === 'balance' || word === 'sensor'
      ? flags.texts.side
      : ((await ask('Which flange, driving or driven')) ?? flags.texts.side);
  const answers = await (questions[word] ?? none)(ask, io);
  return { texts: { ...flags.texts, ...answers.texts, subject: word, side }, chords: [], at: answers.at ?? [] };
}

interface Answers {
  readonly texts: Typed['texts'];
  readonly at?: readonly string[];
}

const none = async (): Promise<Answers> => ({ texts: {} });

const questions: Readonly<Record<string, (ask: Ask, io: Io) => Promise<Answers>>> = {
  circle: async (ask, io) => {
    const holes = await ask('How many holes');
    const count = Number(holes);
    if (Number.isInteger(count) && count >= 2 && count <= 72) io.out(`${chordAdvice(count)}\n`);
    const span = (await ask('Which two: neighbours, skip_one, farthest, or how many positions apart')) ?? 'farthest';
    const over = await ask('Readings over the outside of these two holes, or of bolts in them');
    const between = await ask('Readings between them, near edge to near edge');
    const centres =
      over === undefined && between === undefined ? await ask('Readings between their centres') : undefined;
    const hole = await ask('Diameter of the holes, or of the bolts measured over');
    const outside = await ask("The flange's outside diameter");
    return { texts: { holes, span, over, between, centres, hole, outside } };
  },
  pattern: async (ask) => {
    const file = await ask('File with the points (x,y a line, or a DXF)');
    if (file !== undefined) return { texts: { file, hole: await ask('Diameter of the holes') } };
    const at: string[] = [];
    for (;;) {
      const point = await ask(`Hole ${at.length + 1}, x,y (empty: that was the last)`);
      if (point === undefined) return { at, texts: { hole: await ask('Diameter of the holes') } };
      at.push(point);
    }
  },
  register: async (ask) => {
    const shape = (await ask('Does it go into the face (bore) or stand out (spigot)')) ?? 'bore';
    const key = /^(s|m|out)/i.test(shape) ? 'spigot' : 'bore';
    const texts = {
      [key]: await ask('Readings across it, in several directions'),
      directions: await ask('Direction of each reading, degrees'),
      instrument: (await ask('Instrument: caliper, micrometer, dial, ruler')) ?? 'caliper',
      depth: await ask('How deep it is, or how far it stands out'),
      outside: await ask("The flange's outside diameter"),
    };
    return { texts };
  },
  ring: async (ask) => {
    const ring = await ask('Marked size of the smallest ring that went on (empty: it was a plug)');
    const plug = ring === undefined ? await ask('Marked size of the largest plug that went in') : undefined;
    const step = await ask('From one marked size to the next');
    const trusted = await ask("A size trusted more than the printer, such as a micrometer's (empty: none)");
    const allowance = trusted === undefined ? undefined : await ask('print.registers the gauges were made with');
    return { texts: { ring, plug, step, trusted, allowance } };
  },
  runout: async (ask) => {
    const rim = await ask('Dial around the rim or register, at equal steps, counter-clockwise from the x axis');
    const face = await ask('Dial around the face, likewise');
    const radius = face === undefined ? undefined : await ask('How far from the axis the face was read');
    return { texts: { rim, face, radius } };
  },
  thread: async (ask) => {
    const diameter = await ask('Diameter over the crests of the screw');
    const ten = await ask('Length over ten pitches');
    const pitch = ten === undefined ? await ask('Pitch by a thread gauge') : undefined;
    const tpi = ten === undefined && pitch === undefined ? await ask('Threads per inch by a gauge') : undefined;
    return { texts: { diameter, ten, pitch, tpi } };
  },
  sensor: async (ask) => ({
    texts: {
      resistance: await ask('Unplugged: resistance between two leads, "1100 ohm" or open'),
      polarity: await ask('The same with the meter swapped: same or differs'),
      supply: await ask('Steel passed quickly before it, unplugged, meter on AC volts: none (gives volts) or needed'),
      output: await ask('Plugged in: grows, switches, two, or current'),
      slow: await ask('Turned tooth by tooth, does it still switch: yes or no'),
      turned: await ask('Turned a quarter in its hole: same or fades'),
      magnet: await ask('Does a paper clip stay on its tip: yes or no'),
    },
  }),
  balance: async (ask, io) => {
    io.out('Same speed and same pickup in every run. Angles: degrees counter-clockwise from a mark on the shaft.\n');
    const first = await ask('Vibration as found, "4.2 at 130" with phase, or 4.2 (empty: not run yet)');
    const place = async () => ({
      radius: await ask('How far from the axis the weight sits'),
      speed: await ask('Speed of the runs, rpm'),
      duty: await ask('Highest speed in use, rpm'),
      critical: await ask('Lowest critical speed of the shaft, rpm'),
    });
    if (first === undefined)
      return { texts: { weight: await ask('Mass that this end of the shaft carries, kg'), ...(await place()) } };
    const hasPhase = /\bat\b|@/i.test(first);
    const trial = await ask(hasPhase ? 'Trial weight and its angle, "10 g at 90"' : 'Trial weight, "10 g"');
    const reading = hasPhase ? await ask('Vibration with it on, "6.1 at 70"') : undefined;
    const runs = hasPhase ? undefined : await ask('The weight in three places: "0: 7.5, 120: 8.7, 240: 1.6"');
    const check = await ask('Vibration with the correction on (empty: not fitted yet)');
    const fitted = check === undefined ? undefined : await ask('What was fitted, "8 g at 300" (empty: as asked for)');
    const clamp = await ask('What the head of each of two band clamps weighs, "14 g" (empty: no clamps)');
    return { texts: { first, trial, with: reading, runs, check, fitted, clamp, ...(await place()) } };
  },
  vibration: async (ask) => {
    const felt = await ask('Speed it is felt at: "1800 rpm" of the shaft, "2600 rpm engine" or "90 km/h"');
    const isRoad = /km|mph|m\/s/i.test(felt ?? '');
    const texts = {
      felt,
      frequency: await ask('How often it shakes, Hz (empty: not measured)'),
      when: await ask('When: load, coast, neutral, always or standing'),
      higher: await ask('A little faster it: grows or fades'),
      tyre: isRoad ? await ask('Tyre: size on the wall, or rolling radius') : undefined,
      axle: await ask('Shaft turns for one turn of the wheels'),
      gear: await ask('Engine turns for one turn of the shaft in that gear'),
      cylinders: await ask('Cylinders of the engine'),
      critical: await ask('Critical speed of the shaft, rpm'),
    };
    return { texts };
  },
};
