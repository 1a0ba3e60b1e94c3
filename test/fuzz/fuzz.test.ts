// Random tables in random forms of logs, read back; damaged, and read again. `npm run fuzz` tries as many as wanted.
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../statistics/seeded-random.ts';
import { tryCase } from './judge.ts';

describe('intake: any table in any form', () => {
  it('gives the same values, or a problem with its place', () => {
    const faults = Array.from({ length: 300 }, (_, k) => tryCase(seededRandom(1_000_001 + k))).flatMap(({ whole, harmed }, k) =>
      [whole, harmed].flatMap((found) =>
        found && found.fault !== 'slow' ? [`seed ${1_000_001 + k}: ${found.fault}: ${found.why}`] : [],
      ),
    );
    expect(faults).toEqual([]);
  });
});
