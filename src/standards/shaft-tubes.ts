import type { StandardTable, TableRow } from './table.ts';

/** A tube that shaft shops keep. */
export interface ShaftTubeRow extends TableRow {
  /** mm */
  readonly outside: number;
  readonly wall: number;
  /** Id in the material table. */
  readonly material: 'S355' | '6061-T6';
  readonly series: 'inch' | 'metric';
  /** 1: any shaft shop has it. 2: large or heavy, ordered in. 3: aluminium, few shops weld it. */
  readonly price: 1 | 2 | 3;
  readonly memory: true;
}

/** Tubes that propeller shafts are usually made of. Steel stands under S355: drawn tube of 1020 or E355 is at least as strong. */
export const shaftTubes: StandardTable<ShaftTubeRow> = {
  id: 'shaft-tubes',
  edition: 'Tubes of propeller shafts, common practice',
  title: 'Stock tubes of shaft shops',
  source: 'common practice, from memory: sizes that shaft shops keep; ask the shop before the shaft is drawn',
  covers: 'steel 2 to 4 inch and 60 to 100 mm, aluminium 3 to 5 inch',
  verified: 'memory',
  unit: 'mm',
  notes: [
    'Price classes stand for the tube and its welding, not for a quotation.',
    'Carbon fibre is not listed: its stiffness hangs on the winding, and only its maker can state its critical speed.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { outside: 50.8, wall: 1.65, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 50.8, wall: 3.05, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 60, wall: 2.5, material: 'S355', series: 'metric', price: 1, memory: true },
    { outside: 63.5, wall: 1.65, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 63.5, wall: 2.11, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 70, wall: 2.5, material: 'S355', series: 'metric', price: 1, memory: true },
    { outside: 76.2, wall: 1.65, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 76.2, wall: 2.11, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 76.2, wall: 3.05, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 80, wall: 3, material: 'S355', series: 'metric', price: 1, memory: true },
    { outside: 88.9, wall: 2.11, material: 'S355', series: 'inch', price: 1, memory: true },
    { outside: 90, wall: 3, material: 'S355', series: 'metric', price: 1, memory: true },
    { outside: 100, wall: 3, material: 'S355', series: 'metric', price: 2, memory: true },
    { outside: 101.6, wall: 2.11, material: 'S355', series: 'inch', price: 2, memory: true },
    { outside: 101.6, wall: 3.4, material: 'S355', series: 'inch', price: 2, memory: true },
    { outside: 76.2, wall: 3.18, material: '6061-T6', series: 'inch', price: 3, memory: true },
    { outside: 88.9, wall: 3.18, material: '6061-T6', series: 'inch', price: 3, memory: true },
    { outside: 101.6, wall: 3.18, material: '6061-T6', series: 'inch', price: 3, memory: true },
    { outside: 127, wall: 3.18, material: '6061-T6', series: 'inch', price: 3, memory: true },
  ],
};

/** What a price class means, in words. */
export const priceWords: Readonly<Record<ShaftTubeRow['price'], string>> = {
  1: 'usual stock',
  2: 'ordered in',
  3: 'aluminium, few shops weld it',
};
