import { describe, expect, test } from 'vitest';
import { changesText } from '../../../src/commands/changes/text.ts';

describe('commands/changes/text', () => {
  test('a script whose words stand is named where its cues need new stills', () => {
    const nothing = { figures: [], sentences: [], noLongerHeld: [], plots: [], pictures: [], added: [], removed: [], because: [] };
    const stills = [{ line: 9, column: 1, at: '1:05', title: 'Speedup' }];
    expect(changesText([{ ...nothing, of: 'scripts/larch', title: 'Spoken', stills }], 'publication', '1')).toBe(
      'Spoken (scripts/larch)\n\nCues that need a new still\n  content/scripts/larch.md:9:1: at 1:05, “Speedup”\n',
    );
  });
});
