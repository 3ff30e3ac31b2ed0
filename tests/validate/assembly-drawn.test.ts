/** Which screws go in first, on groups drawn by hand: heads on 100 under flanges of 130, or beside flanges of 80. mm */
import { describe, expect, it } from 'vitest';
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { assemblyOrder } from '../../src/validate/assembly-order.ts';
import { drawn } from './drawn-screws.ts';
import { bent, expectSaid, type Patch } from './help.ts';

/** The driving group and one of the driven side. */
function order(driving: Patch, driven: Patch | null, of: Patch = {}) {
  const { joint, screws } = drawn(driving, of);
  const other = bent(
    screws as unknown as Joint,
    { id: 'others', side: 'driven', fastening: 'into_flange' },
    driven ?? {},
  );
  return assemblyOrder.run({ ...joint, screws: driven ? [screws, other as unknown as ScrewGroup] : [screws] });
}
const small = { outside: { value: 80 } };
const tapped = { holes: { kind: 'tapped' } };

describe('one side under the other flange', () => {
  it('goes in first, and the flange has to come off to tighten it again', () => {
    const [only, ...others] = order({}, null);
    expect(others).toEqual([]);
    if (!only) throw new Error('nothing said');
    expectSaid(only, { verdict: 'pass' });
    expect([only.title, only.feature]).toEqual(['driving screws first', 'screws']);
    expect(only.why).toMatch(/^The driven flange covers the heads of the M8 screws of the driving side/);
    expect(order({ fastening: 'through' }, null)[0]?.title).toBe('driving bolts first');
    expect(order({ fastening: 'through' }, null)[0]?.why).toContain('M8 bolts');
  });

  it('is the only one told of where the other side stands free', () => {
    // The driving flange is small: the driven side's heads lie beside it.
    const said = order({}, {}, { driving: small });
    expect(said.map(({ title, verdict }) => [title, verdict])).toEqual([['driving screws first', 'pass']]);
    const mirrored = order({}, {}, { driven: small });
    expect(mirrored.map(({ title, why }) => [title, why.slice(0, 20)])).toEqual([
      ['driven screws first', 'The driving flange c'],
    ]);
    expect(order({}, {}, { driving: small, driven: small })).toEqual([]);
    expect(order({ seat: 'outside' }, { seat: 'outside' })).toEqual([]);
  });
});

describe('each side under the other flange', () => {
  const failed = (...args: Parameters<typeof order>) => {
    const [only, ...others] = order(...args);
    expect(others).toEqual([]);
    if (!only) throw new Error('nothing said');
    expectSaid(only, { verdict: 'fail' });
    return only;
  };

  it('fails: the driving side first, then the driven one has no way in', () => {
    const { feature, why, remedy } = failed({}, {});
    expect(feature).toBe('others');
    expect(why).toContain('The driving screws have to be tight before the driven flange goes on');
    expect(why).toContain('the driven screws cannot be put in any more: their heads lie under the driving flange');
    expect(remedy).toMatch(
      /^Either put the driven screws in from behind their flange \(adapter\.driven\.fastening: into_adapter\), or put the driving screws in/,
    );
  });

  it('bolts are what comes last, on whichever side they are', () => {
    const driven = failed({}, { fastening: 'through' });
    expect(driven.feature).toBe('others');
    expect(driven.why).toContain(
      'the driven bolts then stick out of the adapter with their heads under the driving flange',
    );
    const driving = failed({ fastening: 'through' }, {});
    expect(driving.feature).toBe('screws');
    expect(driving.why).toContain('The driven screws have to be tight before the driving flange goes on');
    expect(driving.why).toContain('the driving bolts then stick out');
  });

  it('threads in a flange can be drilled out, on the side that has them', () => {
    const { remedy } = failed({}, {}, { driven: tapped });
    expect(remedy).toMatch(/^Either drill the driven flange's threads out.*, or put the driving screws in/);
    expect(failed({}, {}, { driving: tapped, driven: tapped }).remedy).toContain(
      "drill the driving flange's threads out",
    );
  });
});
