import { describe, expect, it } from 'vitest';
import { TOO_LARGE } from '../../src/compute/archive/zip-limits.ts';
import { damaged } from '../../src/compute/store/damage.ts';
import { failureText, Refusal } from '../../src/print/failure.ts';

describe('print/failure', () => {
  it.each([
    [
      'a full disk',
      new Error('ENOSPC: no space left on device, write'),
      'The disk is full: free some space, then run the command again. (ENOSPC)',
    ],
    [
      'a cache that may not be written',
      new Error("EACCES: permission denied, open '/p/.cache/entries/x'"),
      '/p/.cache/entries/x may not be opened or changed: give yourself the right to write to the project folder, .cache/ and dist/ included, then run the command again. (EACCES)',
    ],
    [
      'a cache on a disk that may only be read, where Node tells of a missing folder',
      new Error("ENOENT: no such file or directory, mkdir '/p/.cache/entries'"),
      '/p/.cache/entries may not be opened or changed: give yourself the right to write to the project folder, .cache/ and dist/ included, then run the command again. (EROFS)',
    ],
    [
      'what another error was caused by',
      new Error('printing failed', { cause: new Error('EDQUOT: quota exceeded, write') }),
      'The disk is full',
    ],
    ['damage that comes back', damaged('dist/index.html'), 'The disk gives back other bytes than were written'],
    ['a refusal of ours', new Refusal('dist is a symbolic link'), 'dist is a symbolic link.'],
    [
      'too little memory',
      new Error('Worker terminated due to reaching memory limit: JS heap out of memory'),
      'There is not enough memory',
    ],
    ['an archive that is too large', new Error(TOO_LARGE), 'The archive of a note would be larger than a zip can be'],
    ['a fault of the program', new TypeError('x is not a function'), 'Soakproof itself failed: x is not a function'],
    ['something that is no error', 'text', 'Soakproof itself failed: text. This is a fault of the program'],
  ])('says of %s what to do, in one line without a stack', (_what, thrown, expected) => {
    const text = failureText(thrown);
    expect(text.startsWith(expected), text).toBe(true);
    expect(text).not.toContain('\n');
    expect(text).not.toMatch(/\bat .*node:/);
  });
});
