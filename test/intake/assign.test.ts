import { describe, expect, test } from 'vitest';
import { assignChannels } from '../../src/intake/assign.ts';
import type { ChannelDeclaration, LogDeclaration } from '../../src/intake/log.ts';

const PLACE = { file: 'content/runs/invented.md', line: 4, column: 3 };
const channel = (name: string, column: string, log?: string): ChannelDeclaration => ({
  name,
  quantity: 'temperature',
  column,
  place: PLACE,
  ...(log === undefined ? {} : { log }),
});

function logs(channels: readonly ChannelDeclaration[], more: Partial<LogDeclaration> = {}) {
  const file = (name: string, head: string) => ({
    name,
    file: `data/${name}.csv`,
    bytes: new TextEncoder().encode(`${head}\n${Array.from({ length: 20 }, (_, t) => `${t},1,2`).join('\n')}\n`),
    declaration: {
      file: `${name}.csv`,
      channels: channels.filter(({ log }) => log === undefined || log === name),
      repairs: [],
      place: PLACE,
      ...more,
    },
  });
  return [file('device', 'time,soc,room'), file('meter', 'time,input,room')];
}

describe('intake/assign', () => {
  test('a channel is of the log that has its column, or that it names', () => {
    const { declarations, problems } = assignChannels(
      logs([channel('a', 'input'), channel('b', 'soc'), channel('c', 'room', 'meter')]),
    );
    expect(problems).toEqual([]);
    expect(declarations.map(({ channels }) => channels.map(({ name }) => name))).toEqual([['b'], ['a', 'c']]);
  });

  test('a column that two logs have is a problem with the line to write; one that none has stays with the first', () => {
    const { declarations, problems } = assignChannels(logs([channel('c', 'room'), channel('d', 'nowhere')]));
    expect(problems).toMatchObject([
      { rule: 'column-in-several', place: PLACE, remedy: 'write `log: device` or `log: meter` below it' },
    ]);
    expect(declarations[0]!.channels.map(({ name }) => name)).toContain('d');
  });

  test('what is known of a channel goes with it', () => {
    const known = [{ channel: 'a', reason: 'It writes every two seconds.', place: PLACE }];
    const { declarations } = assignChannels(logs([channel('a', 'input'), channel('b', 'soc')], { known }));
    expect(declarations.map((each) => each.known?.length ?? 0)).toEqual([0, 1]);
  });
});
