/** How a design is held, in the words of a shop, and the keys of the job that choose it. */
import type { Joint, ScrewGroup } from '../job/joint.ts';

type Side = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

const numbers = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** A count in words up to twelve, else in figures. */
export const countText = (count: number): string => numbers[count] ?? String(count);

/** A length for a sentence: "1.6 mm". */
export const mmText = (value: number, decimals = 2): string => `${Number(value.toFixed(decimals)) + 0} mm`;

/** True for one set of bolts through both flanges. */
export const isShared = ({ fastening, seat }: Pick<ScrewGroup, 'fastening' | 'seat'>): boolean =>
  fastening === 'through' && seat === 'outside';

const headWords = { socket: 'socket', flat: 'flat', button: 'button', hex: 'hexagon' } as const;

/** Screws of the two sides, without the wheel's. */
export const sideScrews = ({ screws }: Pick<Joint, 'screws'>): ScrewGroup[] =>
  screws.filter(({ side }) => side !== 'wheel');

/** One group in words: "M10 screws with sunk socket heads into the driving flange". */
export function groupText(group: ScrewGroup): string {
  const { side, fastening, thread, head, seat, washer } = group;
  const washers = washer ? ' with washers' : '';
  const socket = head.kind === 'socket' ? 'socket head ' : '';
  if (isShared(group)) return `${thread} ${socket}bolts and nuts${washers} through both flanges`;
  if (fastening === 'into_adapter')
    return `${thread} ${socket}screws${washers} through the ${side} flange into the adapter`;
  const heads = `${washer ? 'washers under ' : ''}${seat === 'sunk' && head.kind !== 'flat' ? 'sunk ' : ''}${headWords[head.kind]} heads${seat === 'surface' ? ' on the face' : ''}`;
  return fastening === 'through'
    ? `${thread} bolts with ${heads} and nuts behind the ${side} flange`
    : `${thread} screws with ${heads} into the ${side} flange`;
}

/** A whole design in words. */
export const wayText = (joint: Pick<Joint, 'screws' | 'job' | 'dowels'>): string =>
  sideScrews(joint)
    .map((group) => {
      const wish = group.side === 'wheel' ? undefined : joint.job.adapter[group.side].class;
      const stronger = wish === undefined || wish === group.class ? '' : `, class ${group.class}`;
      const pins = group.side !== 'wheel' && joint.dowels?.[group.side] ? ', and dowels' : '';
      return `${groupText(group)}${stronger}${pins}`;
    })
    .join('; ');

/** What a group puts into the adapter, in words: "six M10 socket heads on 93 mm". */
export function holesText(joint: Pick<Joint, 'screws' | 'driving' | 'driven'>, group: ScrewGroup): string {
  const { side, fastening, thread, head, seat, count } = group;
  const what =
    fastening === 'into_adapter'
      ? 'threads'
      : isShared(group)
        ? 'bolts'
        : `${seat === 'sunk' ? `${headWords[head.kind]} ` : ''}heads`;
  const circle = side === 'wheel' ? null : joint[side].holes.circle;
  return `${countText(count)} ${thread} ${what}${circle === null ? ` of the ${side} side` : ` on ${mmText(circle)}`}`;
}

/** The side's own screws, or the bolts that serve both sides. */
export const screwsOf = (joint: Pick<Joint, 'screws'>, side: Side): ScrewGroup | undefined =>
  sideScrews(joint).find((group) => group.side === side) ?? sideScrews(joint).find(isShared);

/** A word of the job file; one that would start a comment is quoted. */
const yamlWord = (word: string): string => (word.startsWith('#') ? `'${word}'` : word);

/**
 * What to write in the job so that this design is the only one left: `adapter: { driven: { fastening: through, screw: M10 } }`.
 * Keys that are typed already are left out.
 */
export function keysFor(joint: Pick<Joint, 'screws' | 'job' | 'dowels'>): string {
  const written = sides.flatMap((side) => {
    const own = screwsOf(joint, side);
    if (!own) return [];
    const wish = joint.job.adapter[side];
    const keys = [
      ...(wish.fastening === 'auto' ? [`fastening: ${own.fastening}`] : []),
      ...(wish.screw === 'auto' && own.fastening !== 'into_flange' ? [`screw: ${yamlWord(own.thread)}`] : []),
      // Heads outside are hexagons unless something else is asked for.
      ...(wish.head === 'auto' && (own.seat !== 'outside' || own.head.kind !== 'hex')
        ? [`head: ${own.head.kind}`]
        : []),
      ...(wish.seat === 'auto' && own.seat !== 'outside' && own.head.kind !== 'flat' ? [`seat: ${own.seat}`] : []),
      ...(own.washer && !wish.washer ? ['washer: true'] : []),
      ...(own.class !== wish.class ? [`class: ${own.class}`] : []),
      ...(joint.dowels?.[side] && wish.dowels === undefined ? ['dowels: auto'] : []),
    ];
    return keys.length === 0 ? [] : [`${side}: { ${keys.join(', ')} }`];
  });
  return written.length === 0 ? '' : `adapter: { ${written.join(', ')} }`;
}
