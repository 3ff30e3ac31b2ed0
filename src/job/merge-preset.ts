/** A preset under typed keys: what was typed wins, and drops what it makes untrue. */
import type { FlangePreset } from './flange-presets.ts';
import { fromCatalogue } from './measured.ts';
import type { FlangeInput, HolesInput, RegisterInput } from './schema.ts';

export interface MergedFlange {
  readonly flange: FlangeInput;
  /** Key paths inside the flange whose value is the preset's. */
  readonly fromPreset: readonly string[];
}

/** Join a typed flange with the preset it starts from. */
export function mergePreset(typed: FlangeInput, preset: FlangePreset): MergedFlange {
  const base = asInput(preset);
  const holes = mergeHoles(typed.holes, base.holes);
  const register = mergeRegister(typed.register, base.register);
  const runout = { ...defined(base.runout), ...defined(typed.runout) };
  const flange: FlangeInput = {
    ...base,
    ...defined(typed),
    ...(register === undefined ? {} : { register }),
    ...(holes === undefined ? {} : { holes }),
    ...(Object.keys(runout).length === 0 ? {} : { runout }),
  };
  return { flange, fromPreset: takenPaths(flange, base, typed) };
}

function asInput(preset: FlangePreset): FlangeInput {
  const { outside, thickness, register, holes, bore, runout } = preset;
  return {
    ...(outside === undefined ? {} : { outside: fromCatalogue(outside) }),
    ...(thickness === undefined ? {} : { thickness: fromCatalogue(thickness) }),
    ...(register === undefined
      ? {}
      : {
          register: {
            ...register,
            diameter: fromCatalogue(register.diameter),
            depth: register.depth === undefined ? undefined : fromCatalogue(register.depth),
          },
        }),
    ...(holes === undefined
      ? {}
      : {
          holes: {
            ...holes,
            circle: fromCatalogue(holes.circle),
            diameter: holes.diameter === undefined ? undefined : fromCatalogue(holes.diameter),
          },
        }),
    ...(bore === undefined ? {} : { bore }),
    ...(runout === undefined ? {} : { runout }),
  };
}

function mergeRegister(typed: FlangeInput['register'], base: FlangeInput['register']): FlangeInput['register'] {
  if (typed === undefined || typed === 'none' || typeof base !== 'object') return typed ?? base;
  const register: RegisterInput = { ...defined(base), ...defined(typed) };
  // A zone belongs to the size and gender it was printed with; a measured size has its own doubt instead.
  const isOwnSize = typed.diameter !== undefined || (typed.gender !== undefined && typed.gender !== base.gender);
  if (isOwnSize && typed.fit === undefined) delete register.fit;
  return register;
}

function mergeHoles(typed: HolesInput | undefined, base: HolesInput | undefined): HolesInput | undefined {
  if (typed === undefined || base === undefined) return typed ?? base;
  const drop = new Set<keyof HolesInput>();
  const replaces = (key: keyof HolesInput, ...others: (keyof HolesInput)[]) => {
    if (typed[key] !== undefined) for (const other of others) if (typed[other] === undefined) drop.add(other);
  };
  replaces('at', 'count', 'circle', 'chord', 'first', 'angles');
  replaces('angles', 'count', 'first');
  replaces('chord', 'circle');
  replaces('thread', 'diameter');
  replaces('diameter', 'thread', 'depth', 'through');
  const kept = Object.fromEntries(Object.entries(defined(base)).filter(([key]) => !drop.has(key as keyof HolesInput)));
  return { ...kept, ...defined(typed) };
}

/** Paths of the merged flange whose value is the preset's; what was typed is the user's own, even when it is the same number. */
function takenPaths(merged: FlangeInput, base: FlangeInput, typed: FlangeInput): string[] {
  const paths: string[] = [];
  for (const key of ['outside', 'thickness', 'bore'] as const) {
    if (base[key] !== undefined && typed[key] === undefined && merged[key] === base[key]) paths.push(key);
  }
  for (const section of ['register', 'holes', 'runout'] as const) {
    const [ours, theirs, own] = [merged[section], base[section], typed[section]];
    if (typeof ours !== 'object' || typeof theirs !== 'object') continue;
    const isTyped = (key: string) => typeof own === 'object' && (own as Record<string, unknown>)[key] !== undefined;
    for (const [key, value] of Object.entries(defined(theirs))) {
      if (!isTyped(key) && (ours as Record<string, unknown>)[key] === value) paths.push(`${section}.${key}`);
    }
  }
  return paths;
}

/** Without the keys that hold undefined, so that spreading never wipes a value. */
function defined<T extends object>(map: T | undefined): Partial<T> {
  return Object.fromEntries(Object.entries(map ?? {}).filter(([, value]) => value !== undefined)) as Partial<T>;
}
