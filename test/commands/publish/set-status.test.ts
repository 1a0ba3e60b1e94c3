import { describe, expect, it } from 'vitest';
import { setPublished } from '../../../src/commands/publish/set-status.ts';

describe('commands/publish/set-status', () => {
  it.each([
    ['---\ntitle: x\nstatus: draft\n---\nstatus: draft\n', '---\ntitle: x\nstatus: published\n---\nstatus: draft\n'],
    [
      '---\r\nstatus:   held back  # for now\r\ntitle: x\r\n---\r\n',
      '---\r\nstatus:   published  # for now\r\ntitle: x\r\n---\r\n',
    ],
    ['\uFEFF---\nstatus: "draft"\n---\n', '\uFEFF---\nstatus: published\n---\n'],
    ["---\nsummary: |\n  status: draft\nstatus: 'held back'\n---\n", '---\nsummary: |\n  status: draft\nstatus: published\n---\n'],
    ['---\nstatus: published\n---\n', '---\nstatus: published\n---\n'],
  ])('changes the status and no other byte: %j', (before, after) => {
    expect(setPublished(before)).toBe(after);
  });
});
