/** Words of the bench where a key of the job file is none: for labels and choices only, a key's name stays what it is. */

/** By whole path where it matters, else by key. */
const labels: Readonly<Record<string, string>> = {
  gender: 'spigot or recess',
  was: 'old sensor',
  runout: 'run-out',
  pole: 'sensing element',
  set_true: 'set true within',
  'driving.from': 'known pattern',
  'driven.from': 'known pattern',
  'driving.behind': 'free room behind',
  'driven.behind': 'free room behind',
  'bracket.sensor.behind': 'length behind the ear',
};

/** By key and word. */
const options: Readonly<Record<string, string>> = {
  'gender male': 'male: spigot, stands out',
  'gender female': 'female: recess, goes in',
  'kind hall': 'Hall',
  'kind differential_hall': 'differential Hall',
  'kind two_channel_hall': 'two-channel Hall',
  'kind active_wheel_speed': 'active wheel speed',
};

const plain = (key: string): string => key.replaceAll('_', ' ');

const found = (table: Readonly<Record<string, string>>, key: string): string | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;

/** What a key is called on the sheet. */
export function benchLabel(path: readonly (string | number)[]): string {
  const key = String(path.at(-1));
  return found(labels, path.join('.')) ?? found(labels, key) ?? plain(key);
}

/** What a legal word of a key is called among its choices. */
export const benchOption = (path: readonly (string | number)[], word: string): string =>
  found(options, `${String(path.at(-1))} ${word}`) ?? plain(word);
