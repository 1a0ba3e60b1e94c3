/** Which channel of which run a request asks for, and what is wrong with the request. */
import type { Channel } from '../../intake/log.ts';
import { error, type Problem } from '../../problem.ts';
import type { PlotRequest } from '../../register/requests.ts';
import { meant, oneOf } from '../../register/values/names.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { MOST_LINES } from '../drawing/palette.ts';
import { runName } from './figure-text.ts';

/** One thing to draw of every run: the channel of each subject, in order. */
export interface Slot {
  readonly name: string;
  readonly channels: readonly Channel[];
}

export interface Slots {
  readonly slots: readonly Slot[];
  readonly problems: readonly Problem[];
}

/** Finds the channels asked for; without any, the primary temperature of each run. */
export function slotsOf(request: PlotRequest, subjects: readonly PlotSubject[]): Slots {
  if (subjects.length > MOST_LINES) return { slots: [], problems: [tooMany(request, subjects.length)] };
  const names = request.channels.length > 0 ? request.channels : [null];
  const found = names.map((name) => slotOf(name, request, subjects));
  return { slots: found.flatMap((each) => (each.slot ? [each.slot] : [])), problems: found.flatMap((each) => each.problems) };
}

function slotOf(name: string | null, request: PlotRequest, subjects: readonly PlotSubject[]): { slot?: Slot; problems: Problem[] } {
  const found = subjects.map((subject) => channelOf(name, request, subject));
  const channels = found.filter((each): each is Channel => 'values' in each);
  const problems = found.filter((each): each is Problem => !('values' in each));
  const first = channels[0];
  if (problems.length > 0 || !first) return { problems };
  const other = channels.find((channel) => channel.quantity !== first.quantity || channel.unit !== first.unit);
  if (other) return { problems: [mixed(request, first, other)] };
  return { slot: { name: name ?? first.name, channels }, problems };
}

function channelOf(name: string | null, request: PlotRequest, subject: PlotSubject): Channel | Problem {
  const { channels } = subject.log;
  const channel =
    name === null ? channels.find((each) => each.quantity === 'temperature') : channels.find((each) => each.name === name);
  if (!channel) return name === null ? noTemperature(request, subject) : unknown(name, request, subject);
  if (!channel.values.some((value) => Number.isFinite(value))) return empty(channel, request, subject);
  return channel;
}

function unknown(name: string, request: PlotRequest, subject: PlotSubject): Problem {
  const names = subject.log.channels.map((channel) => channel.name);
  return error('unknown-channel', request.place, `the run ${runName(subject)} has no channel \`${name}\``, {
    expected: `one of its channels: ${oneOf(names)}`,
    ...meant(name, names),
  });
}

function noTemperature(request: PlotRequest, subject: PlotSubject): Problem {
  const names = subject.log.channels.map((channel) => channel.name);
  return error('unknown-channel', request.place, `the run ${runName(subject)} has no temperature channel to draw`, {
    expected: `channels="…" with one or more of ${oneOf(names)}`,
  });
}

function empty(channel: Channel, request: PlotRequest, subject: PlotSubject): Problem {
  return error(
    'no-readings',
    request.place,
    `the channel \`${channel.name}\` of the run ${runName(subject)} has no reading to draw`,
    {
      expected: 'at least one row with a number in its column',
      remedy: `look at the column "${channel.column}" of ${subject.log.file}`,
    },
  );
}

function mixed(request: PlotRequest, one: Channel, other: Channel): Problem {
  const told = (channel: Channel) => `${channel.quantity} in ${channel.unit}`;
  return error(
    'different-quantities',
    request.place,
    `the channel \`${one.name}\` is ${told(one)} in one run and ${told(other)} in another`,
    {
      expected: 'one quantity and unit in all runs of a plot',
      remedy: 'name the channels alike in the runs, or draw them apart',
    },
  );
}

/** Says that a plot cannot hold so many runs. */
export function tooMany(request: PlotRequest, count: number): Problem {
  return error('too-many-runs', request.place, `${count} runs in one plot`, {
    expected: `at most ${MOST_LINES}, which can still be told apart`,
    remedy: 'draw them in two plots',
  });
}
