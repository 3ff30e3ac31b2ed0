/** Short coded texts of the trade: tolerance zones, threads, materials, balance grades. Each is looked up as it is read. */
import type { z } from 'zod';
import { balanceGrade as findGrade } from '../standards/balance-grades.ts';
import { parseZone } from '../standards/iso286.ts';
import { findMaterial, materialIds } from '../standards/materials.ts';
import type { Lookup } from '../standards/table.ts';
import { findThread } from '../standards/threads.ts';
import { shownValue } from './errors.ts';
import type { Answer } from './field.ts';
import { accept, field, refuse } from './field.ts';

/** No code of the trade is longer; what is longer is never looked up. */
const longestCode = 40;

interface Code {
  /** What it is, with examples: "a thread, such as M10". */
  readonly form: string;
  /** The uniform spelling of a code, or why there is none. */
  readonly find: (text: string) => Lookup<string>;
  /** Words that are taken besides codes. */
  readonly words?: readonly string[];
}

function code({ form, find, words = [] }: Code, about: string): z.ZodType<string, unknown> {
  const wanted = words.length === 0 ? form : `${words.join(', ')}, or ${form}`;
  return field(
    (typed): Answer<string> => {
      if ((typeof typed !== 'string' && typeof typed !== 'number') || String(typed).length > longestCode) {
        return refuse(`Must be ${wanted}; got ${shownValue(typed)}.`, { allowed: wanted });
      }
      const text = String(typed).trim();
      const word = words.find((candidate) => candidate === text.toLowerCase());
      if (word !== undefined) return accept(word);
      const answer = find(text);
      return answer.ok ? accept(answer.value) : refuse(answer.why, { allowed: wanted });
    },
    { description: `${about} Write ${wanted}.`, type: ['string', 'number'] },
  );
}

/** A balance grade of ISO 21940-11: G16, G 6.3, 2.5. Read as 'G16'. */
export function balanceGrade(about: string): z.ZodType<string, unknown> {
  const find = (text: string): Lookup<string> => {
    const grade = findGrade(text);
    return grade.ok ? { ok: true, value: `G${grade.value.G}` } : grade;
  };
  return code({ form: 'a balance grade of ISO 21940-11, such as G40, G16, G6.3 or G2.5', find }, about);
}

/** A tolerance zone of ISO 286, H7 or g6. */
export function zone(about: string, words: readonly string[] = []): z.ZodType<string, unknown> {
  const find = (text: string): Lookup<string> => {
    const parsed = parseZone(text);
    return parsed.ok ? { ok: true, value: parsed.value.letter + parsed.value.grade } : parsed;
  };
  return code({ form: 'a tolerance zone of ISO 286, such as H7 or g6', find, words }, about);
}

/** A thread that the tables hold, read as its uniform designation: 'M10', 'M10x1.25', '3/8-16 UNC'. */
export function thread(about: string, words: readonly string[] = []): z.ZodType<string, unknown> {
  const find = (text: string): Lookup<string> => {
    const found = findThread(text);
    return found.ok ? { ok: true, value: found.value.designation } : found;
  };
  return code({ form: 'a thread, such as M10, M10x1.25 or 3/8-16 UNC', find, words }, about);
}

/** A material that the table holds, read as its id. */
export function material(about: string): z.ZodType<string, unknown> {
  const find = (text: string): Lookup<string> => {
    const found = findMaterial(text);
    return found.ok ? { ok: true, value: found.value.id } : found;
  };
  return code({ form: `a material: ${materialIds.join(', ')}`, find }, about);
}
