import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDoors } from './doors.ts';

const ROOT = join(import.meta.dirname, '..');
const KEPT = join(import.meta.dirname, 'doors');
const { lists, dead } = readDoors(ROOT);
const nameOf = (room: string) => `${room === '.' ? 'root' : room}.txt`;

describe('doors', () => {
  it.each([...lists])('%s offers other rooms what is written down, and no more', async (room, list) => {
    await expect(list).toMatchFileSnapshot(join(KEPT, nameOf(room)));
  });

  it('there is one list a room', () => {
    expect(readdirSync(KEPT).sort()).toEqual([...lists.keys()].map(nameOf).sort());
  });

  it('nothing is exported that no other file imports', () => {
    expect(dead.map(({ file, name }) => `${file}: ${name}`)).toEqual([]);
  });
});
