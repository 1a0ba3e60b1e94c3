/** Whether readings lie where their instrument is accurate. */
import type { Of } from './absent.ts';
import type { AccurateRange, RunContext } from './context.ts';
import type { Figure } from './figure.ts';
import { instrumentOf, kindOf, type Sensor } from './sources.ts';

/** As stated for the quantity, else from the tolerance class of the sensor; an end that nothing states is open. */
export function accurateRange(context: RunContext, channel: Sensor): AccurateRange {
  const instrument = instrumentOf(context, channel);
  const stated = instrument?.accurate?.[channel.quantity] ?? instrument?.accurate?.[kindOf(channel)];
  const accuracy = instrument?.accuracy[channel.quantity] ?? instrument?.accuracy[kindOf(channel)];
  const from = stated?.from ?? accuracy?.range?.[0];
  const to = stated?.to ?? accuracy?.range?.[1];
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

/** What a figure says of itself when its readings lie outside; nothing when they lie within. `reading` in the channel's unit. */
export function rangeWords(context: RunContext, channel: Sensor, reading: number): Of {
  const { from, to } = accurateRange(context, channel);
  return {
    ...(from !== undefined && reading < from ? { below_accurate_range: true } : {}),
    ...(to !== undefined && reading > to ? { above_accurate_range: true } : {}),
  };
}

const SIDES = ['below', 'above'] as const;

/**
 * `rangeWords` of a value that several channels' readings went into, with the names of those that lie outside; `means` in the
 * channels' units.
 */
export function rangeWordsOf(
  context: RunContext,
  channels: readonly (Sensor & { readonly name: string })[],
  means: readonly number[],
): Of {
  const words = channels.map((channel, i) => rangeWords(context, channel, means[i]!));
  return Object.fromEntries(
    SIDES.flatMap((side) => {
      const outside = channels.filter((_, i) => words[i]![`${side}_accurate_range`] === true);
      if (outside.length === 0) return [];
      const names = outside.map(({ name }) => name).join(', ');
      return [
        [`${side}_accurate_range`, true],
        [`${side}_accurate_range_of`, names],
      ];
    }),
  );
}

/** What is computed from figures outside their accurate range lies outside too. */
export function rangeMarks(...figures: readonly Pick<Figure, 'of'>[]): Of {
  return Object.fromEntries(
    SIDES.map((side) => `${side}_accurate_range`)
      .filter((mark) => figures.some(({ of }) => of?.[mark] === true))
      .map((mark) => [mark, true]),
  );
}
