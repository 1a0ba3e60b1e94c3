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
});
