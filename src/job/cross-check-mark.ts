/** Checks of the keys that mark a position on the wheel: one mark, and teeth left beside it. */
import type { Report } from './cross-check-words.ts';
import type { WheelInput } from './schema-wheel.ts';

/** Judge wheel.missing, wheel.wide and wheel.extra against each other and the count of teeth. */
export function checkMark({ teeth, missing, wide = 0, extra = 0 }: WheelInput, report: Report): void {
  const given = [
    { key: 'missing', count: missing },
    { key: 'wide', count: wide },
    { key: 'extra', count: extra },
  ].filter(({ count }) => count > 0);
  if (given.length > 1) {
    const [first, ...others] = given.map(({ key }) => key);
    report(
      `wheel.${others.at(-1)}`,
      `A turn takes one mark of a position, and ${given.map(({ key }) => `wheel.${key}`).join(' and ')} are given: keep one, such as wheel.${first}, and leave out the rest.`,
      { allowed: 'one of missing, wide, extra' },
    );
    return;
  }
  if (teeth === 'auto') return;
  if (missing >= teeth) report('wheel.missing', `${missing} missing teeth of ${teeth}: at least one must be left.`);
  if (wide > teeth - 2)
    report(
      'wheel.wide',
      `${wide} valleys filled of ${teeth} make a wide tooth of ${wide + 1} places: at least one plain tooth must be left beside it. Give ${teeth - 2} or less.`,
    );
}
