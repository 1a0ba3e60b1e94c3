/** The example of each key in the reference is read by the real register without a problem: in a file of its kind, with all that must be there. */
import { describe, expect, it } from 'vitest';
import { readRegister } from '../../src/register/read.ts';
import { lineOf } from '../../src/register/values/key-line.ts';
import { BASE, DATA, fileOf, framesOf, IDS, mapping, problemsWith, SHAPES } from './content-files.ts';

const CASES = [...SHAPES].flatMap(([title, { facts }]) =>
  facts.flatMap((fact) => {
    const line = lineOf(fact);
    if (line === undefined) return [];
    const text = title.startsWith('content/') ? line : mapping(title, line);
    const files = framesOf(title).map(({ folder, wrap }) => fileOf(folder, IDS[folder]![0]!, wrap(text)));
    return [{ name: `${title}: ${fact.key}`, files }];
  }),
);

describe('the examples of the reference', () => {
  it('stand in files that are right without them', () => {
    expect(readRegister(BASE, DATA).problems).toEqual([]);
  });

  // A key of runs and setups is read in one of them at least: of lines and tables only a run can speak, of a channel's parts a setup may.
  it.each(CASES)('$name', ({ files }) => {
    const tries = files.map((file) => problemsWith(file));
    expect(tries.some((problems) => problems.length === 0) ? [] : tries, files[0]?.text).toEqual([]);
  });
});
