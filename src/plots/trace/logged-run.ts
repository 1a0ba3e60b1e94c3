/** A run's log as a trace draws it. */
import type { Channel } from '../../intake/log.ts';
import { figureOf, figureText, plainName } from '../data/figure-text.ts';
import { riseOver } from '../data/rise-over-ambient.ts';
import { throttledNow } from '../data/throttle-flags.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { loadStart } from '../drawing/lines/align.ts';
import { presentReadings, segments } from '../drawing/lines/segments.ts';
import type { TraceChannel, TraceReadings, TraceRun } from '../drawing/lines/trace-run.ts';

export function loggedRun(subject: PlotSubject): TraceRun {
  const { alias, title, log, derived } = subject;
  return {
    alias,
    title,
    load: loadStart(subject) ?? null,
    begin: log.time.seconds[0] ?? 0,
    end: log.time.seconds.at(-1) ?? 0,
    phases: derived.phases,
    told: (figure, channel, unit) => figureText(figureOf(subject, figure, channel), unit),
  };
}

/** Readings that tell no step are taken to hundredths. */
const UNKNOWN_STEP = 0.01;

export function loggedChannel(subject: PlotSubject, channel: Channel): TraceChannel {
  const { name, quantity, unit, step } = channel;
  const limit = subject.context.device.throttleAt[name]?.value;
  return {
    name,
    label: channel.label ?? plainName(name),
    quantity,
    unit,
    step: step ?? UNKNOWN_STEP,
    ...(limit === undefined ? {} : { limit }),
    readings: () => readingsOf(subject, quantity === 'throttle_flag' ? throttledNow(channel) : channel.values),
    rise: () => {
      const values = riseOver(subject, channel);
      return values && readingsOf(subject, values);
    },
  };
}

function readingsOf({ log }: PlotSubject, values: Float64Array): TraceReadings {
  const { x: t, y } = presentReadings(log.time.seconds, values);
  return { t, y, segments: segments(t), count: t.length, means: 'all' };
}
