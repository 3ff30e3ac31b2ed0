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
  chord: 'hole to next hole',
  chords: 'hole to hole, several',
  'duty.grade': 'balance grade',
  'driving.holes.at': 'x, y of each hole',
  'driven.holes.at': 'x, y of each hole',
  'driving.holes.first': 'angle of hole 1',
  'driven.holes.first': 'angle of hole 1',
  'adapter.web': 'least web between holes',
  'adapter.setup': 'how it is turned over',
  'adapter.runout': 'run-out, one register to the other',
  'wheel.wide': 'wide gaps as mark',
  'wheel.extra': 'extra tooth as mark',
  'wheel.missing': 'missing teeth',
  'wheel.ratio': 'tooth share of pitch',
  'wheel.stock': 'left in the bore to turn',
  'wheel.room': 'room round the tips',
  'wheel.tooth': 'angle of tooth 1',
  'wheel.screws.first': 'angle of screw 1',
  'sensor.tooth': 'least tooth it reads',
  'sensor.tooth_most': 'widest tooth it reads',
  'sensor.valley': 'least valley it reads',
  'sensor.height': 'least height it reads',
  'sensor.thickness': 'least sheet it reads',
  'sensor.pitch': 'least pitch it reads',
  'sensor.float': 'end float of the shaft',
  'sensor.travel': 'travel with the load',
  'sensor.carrier': 'material of its carrier',
  'sensor.crawl': 'slowest speed to read',
  'sensor.axle': 'shaft turns in one wheel turn',
  'sensor.expects': 'controller expects',
  'sensor.expects.whole': 'whole numbers only',
  'sheet.web': 'least web, of thickness',
  'sheet.hole': 'least hole, of thickness',
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
