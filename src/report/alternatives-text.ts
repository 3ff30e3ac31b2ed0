/** Other ways, and why nothing passes, as titled paragraphs for the terminal. */
import type { OtherWays } from './alternatives.ts';

export interface TitledList {
  readonly title: string;
  readonly paragraphs: readonly string[];
}

/** The sections that there is something to say in. */
export function waysAsText(ways: OtherWays | null): TitledList[] {
  if (ways === null) return [];
  const { chosen, others, impossible } = ways;
  const told = others.flatMap(({ what, trades, sizes, keys }) => [
    `- ${what}: ${trades} (${sizes}).${keys === '' ? '' : ` To have it, write ${keys}`}`,
  ]);
  return [
    ...(impossible.length > 0 ? [{ title: 'Why nothing passes', paragraphs: impossible }] : []),
    ...(others.length > 0
      ? [{ title: 'Other ways', paragraphs: [`${chosen} These pass too; what each trades against it:`, ...told] }]
      : []),
  ];
}
