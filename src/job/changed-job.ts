/** A job with values put in place of what its text says, without its text being written anew: variants of a sweep, remedies that are tried. */
import type { JobDocument, KeyPlace } from './document.ts';
import { isWithin, pathText } from './errors.ts';
import { isMap } from './field.ts';
import { type JobRead, readJobDocument } from './read.ts';
import { type EditPath, withValue } from './with-value.ts';

/** A value that takes the place of what stands at a path. */
export interface PutIn {
  readonly path: EditPath;
  /** Plain data, as a YAML parser gives it. */
  readonly data: unknown;
}

/** Places of a path, of the sections it goes through and of the keys that its value holds: all at the deepest part that was typed. */
function addPlaces(places: Map<string, KeyPlace>, path: EditPath, value: unknown): void {
  let known: KeyPlace = { key: 0, value: 0 };
  for (let length = 1; length <= path.length; length++) {
    const name = pathText(path.slice(0, length));
    known = places.get(name) ?? known;
    if (!places.has(name)) places.set(name, known);
  }
  const below = (steps: EditPath, data: unknown): void => {
    const keys: readonly (string | number)[] = Array.isArray(data)
      ? [...data.keys()]
      : isMap(data)
        ? Object.keys(data)
        : [];
    for (const key of keys) {
      places.set(pathText([...steps, key]), known);
      below([...steps, key], (data as Record<string | number, unknown>)[key]);
    }
  };
  below(path, value);
}

/**
 * A job with values put in, read: the same as if they had been typed into the file. Mistakes stand where the field stands in the job, or at
 * the section it would go into.
 * @param document the job's text, parsed without a fault
 * @param file how errors name it
 * @param puts none inside another; none through a plain value that has to stay
 */
export function readChanged(document: JobDocument, file: string, puts: readonly PutIn[]): JobRead {
  const places = new Map(document.places);
  let { data } = document;
  for (const put of puts) {
    data = withValue(data, put.path, put.data);
    const name = pathText(put.path);
    // What stood below a section that is now a value is gone, and its keys with it.
    for (const known of places.keys()) if (known !== name && isWithin(known, name)) places.delete(known);
    addPlaces(places, put.path, put.data);
  }
  return readJobDocument({ ...document, data, places }, file);
}
