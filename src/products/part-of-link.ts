/** The part of a joint that a link of its chains sits in, as a feature, so that it lights up elsewhere too. */

const parts: Readonly<Record<string, string>> = {
  'driving-seat': 'driving-register',
  'driven-seat': 'driven-register',
  lean: 'body',
  'turn-over': 'body',
  parallelism: 'body',
  'wheel-seat-runout': 'wheel-seat',
  'wheel-bore': 'wheel-bore',
  teeth: 'wheel-outline',
  'set-true': 'wheel-outline',
  'shape-adapter': 'body',
  'shape-wheel': 'wheel-outline',
};

/** Null where the link sits in no part of the joint: a flange's own run-out, screws that differ. */
export function partOfLink(id: string): string | null {
  // Screws of a group pull by their shape under the group's own name, which is that of its holes.
  return parts[id] ?? (id.startsWith('shape-') ? id.slice('shape-'.length) : null);
}
