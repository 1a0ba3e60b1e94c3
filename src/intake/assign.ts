/** Which log of a run a channel is a column of, where it does not say so. */
import { error, type Problem } from '../problem.ts';
import type { ChannelDeclaration, LogDeclaration } from './log.ts';
import { type LogBytes, lookedAt } from './sheet/log-bytes.ts';
import { openSheet, type Sheet } from './sheet/open.ts';
import { pickColumn } from './sheet/pick.ts';

export interface UnassignedLog {
  readonly name: string;
  readonly declaration: LogDeclaration;
  /** Project path. */
  readonly file: string;
  readonly bytes: LogBytes;
}

/**
 * The declarations of several logs, each with the channels that are its own: those that name it, and those that name none and whose column it
 * alone has. A column that two logs have is a problem at its channel; one that none has stays with the first log, where reading tells what
 * there is instead. What is known of channels goes with them.
 */
export function assignChannels(logs: readonly UnassignedLog[]): {
  readonly declarations: readonly LogDeclaration[];
  readonly problems: readonly Problem[];
} {
  if (logs.length < 2) return { declarations: logs.map(({ declaration }) => declaration), problems: [] };
  const sheets = logs.map(({ bytes, file }) => openSheet(lookedAt(bytes), file));
  const problems: Problem[] = [];
  const declarations = logs.map(({ declaration }, index) => {
    const channels = declaration.channels.filter((channel) => {
      if (channel.log !== undefined) return true;
      const having = sheets.flatMap((sheet, k) => (has(sheet, channel) ? [k] : []));
      if (having.length > 1 && index === 0)
        problems.push(
          inSeveral(
            channel,
            having.map((k) => logs[k]!.name),
          ),
        );
      return (having[0] ?? 0) === index;
    });
    const own = (name: string) => channels.some((channel) => channel.name === name);
    const known = declaration.known?.filter((entry) => !('channel' in entry) || own(entry.channel));
    const { known: _, phaseStarts: __, ...rest } = declaration;
    return { ...rest, channels, ...(known && known.length > 0 ? { known } : {}) };
  });
  return { declarations, problems };
}

function has(sheet: Sheet, { column, place, name }: ChannelDeclaration): boolean {
  return typeof pickColumn(sheet, column, place, name) === 'number';
}

function inSeveral({ name, column, place }: ChannelDeclaration, logs: readonly string[]): Problem {
  const [, second] = logs;
  return error(
    'column-in-several',
    place,
    `the logs ${logs.join(' and ')} both have the column \`${column}\` of the channel \`${name}\``,
    {
      expected: 'a channel that says of which log it is',
      remedy: `write \`log: ${logs[0]}\` or \`log: ${second}\` below it`,
    },
  );
}
