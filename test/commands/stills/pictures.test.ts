import { describe, expect, it } from 'vitest';
import { picturesOf } from '../../../src/commands/stills/pictures.ts';
import type { PicturedThing } from '../../../src/compute/models/stills.ts';

/** Pictures of numbers, all of the second cue at 15 s. */
function namesOf(...names: readonly string[]): string[] {
  const pictures = names.map(
    (name): PicturedThing => ({
      ...{ cue: 2, at: 15, line: 1, column: 1, name },
      shows: { kind: 'number', what: 'Peak', shown: '71.3 °C', uncertainty: '', of: '' },
    }),
  );
  const model = { title: 'Short', speaksFor: [], foot: { of: '', address: '' }, texts: [], pictures };
  return picturesOf(model, 'content/scripts/short.md', () => '').pictures.map(({ name }) => name);
}

describe('commands/stills/pictures', () => {
  it('has a name of its own for each of `r`, `r` again and `r - 2`', () => {
    expect(namesOf('r', 'r', 'r-2')).toEqual(['02-0m15s-r', '02-0m15s-r-2', '02-0m15s-r-2-2']);
  });

  it('has a short name for a number of many terms', () => {
    const [name, other] = namesOf('fast.load_power-'.repeat(30), 'fast.load_power-'.repeat(31));
    expect(name!.length).toBeLessThanOrEqual(100);
    expect(name).not.toBe(other);
  });

  it('warns of a picture that holds too much to be read on a phone', () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9000 9000" width="9000" height="9000"></svg>';
    const shows = {
      kind: 'plot',
      stills: [{ title: 'All of it', alt: '', shown: [], svg: 'blob' }],
    } as unknown as PicturedThing['shows'];
    const model = {
      title: 'Short',
      speaksFor: [],
      foot: { of: '', address: '' },
      texts: [],
      pictures: [{ cue: 1, at: 0, line: 7, column: 1, name: 'all', shows }],
    };
    const { problems } = picturesOf(model, 'content/scripts/short.md', () => svg);
    expect(problems.map(({ rule, place: { line } }) => `${line} ${rule}`)).toEqual(['7 still-type']);
  });
});
