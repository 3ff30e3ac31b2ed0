/** Blocks that read words, whole numbers, lists and sections. */
import { z } from 'zod';
import { nearestWord } from '../units/near.ts';
import { shownValue } from './errors.ts';
import type { Answer } from './field.ts';
import { accept, emptyKey, field, isMap, refuse } from './field.ts';

/** One word out of a list. Case and spaces do not matter. */
export function choice<W extends string>(words: readonly W[], about: string): z.ZodType<W, unknown> {
  return field(
    (typed) => {
      const word = wordAmong(typed, words);
      if (word !== null) return accept(word);
      const near = typeof typed === 'string' ? didYouMean(typed, words) : '';
      return refuse(`Must be ${orList(words)}; got ${shownValue(typed)}.${near}`, {
        allowed: words.join(', '),
      });
    },
    { description: about, enum: [...words, ...words.filter((word) => /^\d/.test(word)).map(Number)] },
  );
}

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number, about: string): z.ZodType<number, unknown> {
  return field(
    (typed) => {
      const value = typeof typed === 'string' && /^\s*[+-]?\d{1,9}\s*$/.test(typed) ? Number(typed) : typed;
      if (typeof value !== 'number' || !Number.isInteger(value))
        return refuse(`Must be a whole number, ${least} to ${most}; got ${shownValue(typed)}.`, {
          allowed: `${least} to ${most}`,
        });
      if (value < least || value > most)
        return refuse(`Must be ${least} to ${most}; got ${shownValue(typed)}.`, {
          allowed: `${least} to ${most}`,
        });
      return accept(value);
    },
    {
      description: `${about} Whole number, ${least} to ${most}.`,
      type: 'integer',
      minimum: least,
      maximum: most,
    },
  );
}

/** A word out of `list`, or a whole number from `least` to `most`. */
export function wholeOr<W extends string>(
  list: readonly W[],
  least: number,
  most: number,
  about: string,
): z.ZodType<number | W, unknown> {
  const number = whole(least, most, about);
  return field(
    (typed): Answer<number | W> => {
      const word = wordAmong(typed, list);
      if (word !== null) return accept(word);
      const read = number.safeParse(typed);
      if (read.success) return accept(read.data);
      const near = typeof typed === 'string' ? didYouMean(typed, list) : '';
      return refuse(
        typeof typed === 'number' && Number.isInteger(typed)
          ? `Must be ${least} to ${most}; got ${shownValue(typed)}.`
          : `Must be ${orList(list)}, or a whole number, ${least} to ${most}; got ${shownValue(typed)}.${near}`,
        { allowed: `${list.join(', ')}, or ${least} to ${most}` },
      );
    },
    {
      description: `${about} Whole number, ${least} to ${most}, or ${orList(list)}.`,
      anyOf: [{ enum: [...list] }, { type: 'integer', minimum: least, maximum: most }],
    },
  );
}

export function yesNo(about: string): z.ZodType<boolean, unknown> {
  return field(
    (typed) => {
      if (typeof typed === 'boolean') return accept(typed);
      return refuse(`Must be true or false; got ${shownValue(typed)}.${yesOrNoHint(typed)}`, {
        allowed: 'true, false',
      });
    },
    { description: about, type: 'boolean' },
  );
}

function yesOrNoHint(typed: unknown): string {
  if (typeof typed !== 'string') return '';
  if (/^(yes|y|on)$/i.test(typed)) return ' Write true for yes.';
  return /^(no|n|off|none)$/i.test(typed) ? ' Write false for no.' : '';
}

/** Printable text of 1 to `most` characters on one line; a bare number is taken as its digits. */
export function words(most: number, about: string): z.ZodType<string, unknown> {
  return field(
    (typed) => {
      if (typeof typed !== 'string' && typeof typed !== 'number')
        return refuse(`Must be text; got ${shownValue(typed)}.`);
      const text = String(typed).trim();
      if (text === '') return refuse('This text is empty.');
      if (text.length > most)
        return refuse(`Must be at most ${most} characters; got ${text.length}.`, {
          allowed: `1 to ${most} characters`,
        });
      if (/[\p{C}\p{Zl}\p{Zp}]/u.test(text))
        return refuse('Holds a character that cannot be printed (a line break, control or invisible one).');
      return accept(text);
    },
    {
      description: `${about} Text, at most ${most} characters.`,
      type: 'string',
      minLength: 1,
      maxLength: most,
    },
  );
}

/** A list of `least` to `most` items, each read by `item`. */
export function listOf<T>(
  item: (typed: unknown) => Answer<T>,
  least: number,
  most: number,
  about: string,
  itemMeta: Record<string, unknown>,
): z.ZodType<T[], unknown> {
  return field(
    (typed) => {
      if (!Array.isArray(typed)) return refuse(`Must be a list, written [a, b, c]; got ${shownValue(typed)}.`);
      if (typed.length < least || typed.length > most)
        return refuse(`Must hold ${least} to ${most} items; got ${typed.length}.`, {
          allowed: `${least} to ${most} items`,
        });
      const answers = typed.map(item);
      const faults = answers.flatMap((answer, index) =>
        answer.ok ? [] : answer.faults.map((fault) => ({ ...fault, path: [index, ...(fault.path ?? [])] })),
      );
      return faults.length > 0
        ? { ok: false, faults }
        : accept(answers.flatMap((answer) => (answer.ok ? [answer.value] : [])));
    },
    { description: about, type: 'array', minItems: least, maxItems: most, items: itemMeta },
  );
}

/** One of `words`, or a section of its own keys. The section's errors keep their paths. */
export function wordOr<W extends string, S extends z.ZodType>(
  list: readonly W[],
  section: S,
  about: string,
): z.ZodType<W | z.output<S>, unknown> {
  return z
    .unknown()
    .transform((typed, context): W | z.output<S> => {
      const word = wordAmong(typed, list);
      if (word !== null) return word;
      if (!isMap(typed)) {
        const message =
          typed === null ? emptyKey : `Must be ${orList(list)}, or keys of its own; got ${shownValue(typed)}.`;
        context.addIssue({ code: 'custom', message, params: { allowed: list.join(', ') } });
        return z.NEVER;
      }
      const read = section.safeParse(typed, { reportInput: true });
      if (read.success) return read.data;
      for (const issue of read.error.issues) context.issues.push({ ...issue, input: issue.input } as never);
      return z.NEVER;
    })
    .meta({ description: about, anyOf: [{ enum: [...list] }, inlineJsonSchema(section)] });
}

/** JSON Schema of an inner section, ready to stand inside another. */
export function inlineJsonSchema(section: z.ZodType): Record<string, unknown> {
  const {
    $schema: _,
    '~standard': __,
    ...rest
  } = z.toJSONSchema(section, { target: 'draft-07', io: 'input' }) as Record<string, unknown>;
  return rest;
}

/** The word of the list that was typed; case, spaces and underscores do not matter. */
export function wordAmong<W extends string>(typed: unknown, list: readonly W[]): W | null {
  if (typeof typed !== 'string' && typeof typed !== 'number') return null;
  const plain = String(typed)
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, ' ');
  return list.find((word) => word.toLowerCase().replace(/_/g, ' ') === plain) ?? null;
}

export function orList(list: readonly string[]): string {
  return list.length < 2 ? (list[0] ?? '') : `${list.slice(0, -1).join(', ')} or ${list[list.length - 1]}`;
}

export function didYouMean(typed: string, list: readonly string[]): string {
  const near = nearestWord(typed, list);
  return near === null ? '' : ` Did you mean ${near}?`;
}
