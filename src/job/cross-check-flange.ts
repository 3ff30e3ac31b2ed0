/** Slips in a flange's own keys: two ways of saying one thing, a radius for a diameter, holes off the part. */
import { findThread } from '../standards/threads.ts';
import type { Report } from './cross-check-words.ts';
import { radiusQuestion, size } from './cross-check-words.ts';
import { chordSetOf, pairedHoles, patternOf, usesOf } from './hole-pattern.ts';
import type { FlangeInput, HolesInput, RegisterInput } from './schema.ts';

/**
 * Report contradictions among the keys of one flange. Missing keys are not its business: a preset may still fill them.
 * `path` is "driving" or "driven".
 */
export function checkFlangeInput(flange: FlangeInput, path: string, report: Report): void {
  if (typeof flange.register === 'object') checkRegister(flange, flange.register, path, report);
  if (flange.holes !== undefined) {
    checkHoleKeys(flange.holes, `${path}.holes`, report);
    checkUse(flange.holes, `${path}.holes`, report);
    checkChords(flange, flange.holes, `${path}.holes`, report);
    checkHoleSizes(flange, flange.holes, path, report);
    checkThreadDepth(flange.holes, path, report);
  }
  const outside = flange.outside?.value;
  if (outside !== undefined && flange.bore !== undefined && flange.bore >= outside) {
    report(`${path}.bore`, `The bore (${size(flange.bore)}) is not smaller than the outside (${size(outside)}).`);
  }
}

/** How each part of a register is measured, for whoever left it out. */
const registerNeeds = {
  gender: 'does the step stand out of the face (male) or go into it (female)?',
  diameter: 'measure across the step in three directions.',
  depth: "measure it with the caliper's depth rod.",
} as const;

function checkRegister(flange: FlangeInput, register: RegisterInput, path: string, report: Report): void {
  if (flange.from === undefined) {
    for (const [key, how] of Object.entries(registerNeeds)) {
      if (register[key as keyof typeof registerNeeds] === undefined)
        report(`${path}.register.${key}`, `The register's ${key} is missing: ${how} Or write register: none.`);
    }
  }
  if (register.fit !== undefined) checkGender(register, path, report);
  const thickness = flange.thickness?.value;
  const depth = register.depth?.value;
  if (register.gender === 'female' && thickness !== undefined && depth !== undefined && depth >= thickness) {
    report(`${path}.register.depth`, `A recess ${size(depth)} deep goes through a flange ${size(thickness)} thick.`);
  }
  const diameter = register.diameter?.value;
  if (diameter === undefined) return;
  const outside = flange.outside?.value;
  if (outside !== undefined && diameter >= outside) {
    const hint =
      2 * outside > diameter
        ? ` Or did you type the radius of the outside? Twice ${outside} is ${size(2 * outside)}.`
        : '';
    report(
      `${path}.register.diameter`,
      `The register (${size(diameter)}) must be smaller than the outside (${size(outside)}).${hint}`,
    );
  }
  const isInside = outside === undefined || (flange.bore ?? 0) < outside;
  if (flange.bore !== undefined && isInside && flange.bore >= diameter) {
    const hint = flange.bore < 2 * diameter ? ` ${radiusQuestion(diameter)}` : '';
    report(
      `${path}.register.diameter`,
      `The register (${size(diameter)}) is not larger than the bore (${size(flange.bore)}).${hint}`,
    );
  }
}

function checkGender({ gender, fit = '' }: RegisterInput, path: string, report: Report): void {
  const isHole = fit === fit.toUpperCase();
  if (gender === 'male' && isHole) {
    report(
      `${path}.register.fit`,
      `${fit} is a zone for holes, and a male register is a shaft: write small letters, such as ${fit.toLowerCase()}.`,
    );
  }
  if (gender === 'female' && !isHole) {
    report(
      `${path}.register.fit`,
      `${fit} is a zone for shafts, and a female register is a hole: write capitals, such as ${fit.toUpperCase()}.`,
    );
  }
}

function checkHoleKeys(holes: HolesInput, path: string, report: Report): void {
  const has = (key: keyof HolesInput) => holes[key] !== undefined;
  if (has('circle') && has('chord'))
    report(`${path}.chord`, 'Give circle or chord, not both: each follows from the other and the count.');
  for (const other of ['circle', 'chord'] as const) {
    if (has('chords') && has(other))
      report(`${path}.${other}`, `The list chords: already tells the circle; delete ${other}, or delete the list.`);
  }
  for (const other of ['count', 'circle', 'chord', 'chords', 'angles', 'first'] as const) {
    if (has('at') && has(other)) {
      const same = other === 'count' && holes.count === holes.at?.length;
      if (!same) report(`${path}.${other}`, `The list at: already places every hole; delete ${other}.`);
    }
  }
  if (has('angles') && has('count') && holes.angles?.length !== holes.count) {
    report(`${path}.angles`, `There are ${holes.angles?.length} angles for ${holes.count} holes; correct one of them.`);
  }
  if (has('angles') && has('chord'))
    report(`${path}.chord`, 'Angles tell uneven spacing, so one chord says nothing; give circle instead.');
  if (has('angles') && has('chords'))
    report(`${path}.chords`, 'Chords of uneven holes say nothing of their circle; give circle and angles, or at.');
  if (has('angles') && has('first'))
    report(`${path}.first`, 'The list angles: already places every hole; delete first.');
  if (has('diameter') && has('thread'))
    report(`${path}.thread`, 'Give diameter for clear holes or thread for tapped ones, not both.');
  if (has('diameter') && !has('thread')) {
    for (const key of ['depth', 'through'] as const) {
      if (has(key))
        report(
          `${path}.${key}`,
          `The key ${key} is for tapped holes; these are clear holes with a diameter. Delete ${key}, or give thread instead of diameter.`,
        );
    }
  }
}

/** Holes that get a screw are evenly spaced among evenly spaced ones. The count may still come from a preset. */
function checkUse({ use, count, at, angles }: HolesInput, path: string, report: Report): void {
  if (use === undefined) return;
  const list = at ?? angles;
  if (list !== undefined) {
    const word = at === undefined ? 'angles' : 'at';
    if (use !== list.length)
      report(
        `${path}.use`,
        `The key use counts off evenly spaced holes, and the list ${word}: places each by itself. Where they are evenly spaced, write count and circle instead of ${word}; otherwise list only the holes that get a screw.`,
        { value: String(use) },
      );
    return;
  }
  if (count === undefined) return;
  const uses = usesOf(count);
  if (uses.includes(use)) return;
  const fewer = uses.filter((each) => each < count);
  const near = fewer.reduce((best, each) => (Math.abs(each - use) < Math.abs(best - use) ? each : best), fewer[0] ?? 0);
  const slip =
    use > count
      ? usesOf(use).includes(count)
        ? ` Were the two swapped? With ${use} holes and ${count} screws write count: ${use}, use: ${count}.`
        : ' Count the holes again: count says how many there are.'
      : near === 0
        ? ' Delete use: this number of holes can only be used all together.'
        : ` Was ${near} meant?`;
  const why =
    use > count
      ? `There are ${count} holes, and ${use} of them cannot get a screw.`
      : `${use} of ${count} holes cannot be evenly spaced.`;
  report(`${path}.use`, `${why}${slip}`, { value: String(use), allowed: uses.join(', ') });
}

/** Chords that belong to no one circle. With a preset the count or hole size may still come from there: resolving looks again. */
function checkChords(flange: FlangeInput, holes: HolesInput, path: string, report: Report): void {
  if (holes.chords === undefined || holes.at !== undefined || holes.angles !== undefined) return;
  const isPatchy = holes.diameter === undefined && flange.from !== undefined;
  const set = isPatchy ? null : chordSetOf(holes);
  if (set === null || set.ok) return;
  const tapped =
    holes.thread !== undefined && holes.diameter === undefined
      ? ' For a reading over bolts write their measured diameter as pin.'
      : '';
  report(`${path}.chords${set.reading === null ? '' : `[${set.reading}].reading`}`, `${set.why}${tapped}`);
}

/** A thread deeper than this many diameters is a slip: nobody taps that deep. Common practice: 2 to 3 d is already long. */
const deepestThread = 6;

function checkThreadDepth({ thread, depth, through }: HolesInput, path: string, report: Report): void {
  const major = majorOf(thread);
  if (major === undefined || depth === undefined || through === true || depth <= deepestThread * major) return;
  const slip = depth / 10 <= deepestThread * major ? ` Was ${size(depth / 10)} meant?` : '';
  report(
    `${path}.holes.depth`,
    `A ${thread} thread ${size(depth)} deep is ${(depth / major).toFixed(0)} diameters: more than anybody taps (up to ${size(deepestThread * major)} is taken here).${slip}`,
  );
}

function checkHoleSizes(flange: FlangeInput, holes: HolesInput, path: string, report: Report): void {
  const pattern = patternOf(holes);
  if (pattern === null) return;
  const hole = holes.diameter?.value ?? majorOf(holes.thread) ?? 0;
  const outside = flange.outside?.value;
  const key =
    holes.at !== undefined
      ? 'at'
      : holes.circle !== undefined
        ? 'circle'
        : holes.chords !== undefined
          ? 'chords'
          : 'chord';
  const radii = pattern.map(({ x, y }) => Math.hypot(x, y));
  const farthest = Math.max(...radii);
  const reach = 2 * farthest + hole;
  if (outside !== undefined && reach >= outside) {
    const at = holes.at === undefined ? `${path}.holes.${key}` : `${path}.holes.at[${radii.indexOf(farthest)}]`;
    const hint =
      reach < 2 * outside && hole < outside / 2
        ? ` If ${outside} is the radius of the outside, write ${size(2 * outside)}.`
        : '';
    const chord =
      key === 'chords' || key === 'chord'
        ? ` A chord between centres can be ${size(outside - hole)} at the most here: count the holes again, and was it read over the outside of two holes?`
        : '';
    report(
      at,
      `The holes break out of the rim: the outside is ${size(outside)}, and they reach ${size(reach)}.${hint}${chord}`,
    );
    return;
  }
  const pair = pairedHoles(pattern);
  if (pair !== null && pair.distance <= hole) {
    const at = holes.at === undefined ? `${path}.holes.${key}` : `${path}.holes.at[${pair.second}]`;
    const wider =
      key === 'circle' && (outside === undefined || 4 * farthest + hole < outside) && 2 * pair.distance > hole;
    const hint = wider ? ` Did you type the radius? Twice ${size(2 * farthest)} is ${size(4 * farthest)}.` : '';
    const what =
      hole === 0 || pair.distance < 1e-6
        ? `Holes ${pair.first + 1} and ${pair.second + 1} stand on one place.`
        : `Neighbouring holes overlap: their centres are ${size(pair.distance)} apart and each is ${size(hole)} wide.`;
    report(at, `${what}${hint}`);
    return;
  }
  const register = typeof flange.register === 'object' ? flange.register.diameter?.value : undefined;
  const nearest = Math.min(...radii);
  if (register === undefined || (outside !== undefined && register >= outside)) return;
  // A register may lie outside of the holes (some large flanges centre on their rim), but its edge may not run through them.
  const wider =
    key === 'circle' && outside !== undefined && 4 * nearest + hole < outside && 4 * nearest - hole > register;
  const hint = wider
    ? ` Did you type the radius of the circle? Twice ${size(2 * nearest)} is ${size(4 * nearest)}.`
    : '';
  const inner = 2 * nearest - hole;
  if (inner >= register) return;
  if (register < reach) {
    const at = holes.at === undefined ? `${path}.holes.${key}` : `${path}.holes.at[${radii.indexOf(nearest)}]`;
    report(
      at,
      `The holes cut into the register: they reach from ${size(inner)} to ${size(reach)} across, and the register is ${size(register)}.${hint}`,
    );
  } else if (wider) {
    report(`${path}.holes.${key}`, `The holes lie inside the register (${size(register)}).${hint}`);
  }
}

/** Major diameter of a thread, mm. */
function majorOf(designation: string | undefined): number | undefined {
  if (designation === undefined) return undefined;
  const thread = findThread(designation);
  return thread.ok ? thread.value.d : undefined;
}
