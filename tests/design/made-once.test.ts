/** Things that come out alike in several ways of one search are one thing. */
import { describe, expect, it } from 'vitest';
import { madeOnce } from '../../src/design/made-once.ts';

describe('what is made once', () => {
  it('is made again for another size, another kind and another search only', () => {
    const [search, another] = [{}, {}];
    let made = 0;
    const ask = (home: object, what: string, size: number) =>
      madeOnce(home, what, { size }, () => ({ number: ++made }));
    const first = ask(search, 'adapter', 0.1 + 0.2);
    expect(ask(search, 'adapter', 0.1 + 0.2)).toBe(first);
    // One unit in the last place is another size.
    expect(ask(search, 'adapter', 0.3)).not.toBe(first);
    expect(ask(search, 'wheel', 0.1 + 0.2)).not.toBe(first);
    expect(ask(another, 'adapter', 0.1 + 0.2)).not.toBe(first);
    expect(made).toBe(4);
  });
});
