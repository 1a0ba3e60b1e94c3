/** The declaration of a run whose log stays with its author, so that it reads the cleaned readings instead. */
import { cleanedNames } from '../../intake/cleaned.ts';
import { mapUnder, type Plain, type PlainFile, type PlainMap } from '../../register/portable/plain-values.ts';
import { STEP_KIND } from '../../register/values/quantity-kinds.ts';
import type { LogSummary } from '../steps/runs/run-step.ts';

type ChannelFacts = LogSummary['channels'][number];

/** Keys of a run that speak of lines of its log, which the cleaned readings have behind them. */
const OF_LINES = ['repairs', 'known'];
/** Keys of a channel that speak of its column in the log. */
const OF_COLUMN = ['column', 'unit', 'unit_reason', 'missing', 'step'];

/**
 * @param path - of the cleaned readings, below data/.
 * @param timed - whether something beside the log is found in it by the time of day. If not, that stays with the author.
 */
export function readingCleaned(run: PlainFile, { channels, time }: LogSummary, path: string, timed: boolean): PlainFile {
  const keys = new Map(run.keys);
  const zone = mapUnder(mapUnder(keys, 'log'), 'time').get('zone');
  for (const key of OF_LINES) keys.delete(key);
  const declared = mapUnder(keys, 'channels');
  keys.set(
    'log',
    new Map<string, Plain>([
      ['file', path],
      [
        'time',
        new Map<string, Plain>([
          ['column', cleanedNames(channels).time],
          ['format', 'elapsed'],
          ['unit', 's'],
          ...(timed && zone !== undefined ? [['zone', zone] as const] : []),
          ...(timed && time.start !== null ? [['start', instantText(time.start)] as const] : []),
        ]),
      ],
      ['share', 'as it came'],
    ]),
  );
  keys.set(
    'channels',
    new Map(channels.map((channel) => [channel.name, cleanedChannel(mapUnder(declared, channel.name), channel)])),
  );
  return { ...run, keys };
}

function cleanedChannel(declared: PlainMap, { name, quantity, unit, step }: ChannelFacts): PlainMap {
  const own = [...declared].filter(([key]) => !OF_COLUMN.includes(key));
  // A channel of a range of columns has no entry of its own.
  const kept: (readonly [string, Plain])[] = declared.size > 0 ? own : [['quantity', quantity]];
  if (quantity === 'throttle_flag') return new Map([...kept, ['column', name]]);
  return new Map<string, Plain>([
    ...kept,
    ['column', name],
    ['unit', unit],
    ['unit_reason', 'the cleaned readings are in canonical units'],
    ...(step === null ? [] : [['step', stepText(quantity, step)] as const]),
  ]);
}

/** An instant in UTC to the microsecond (ISO 8601), which is how finely a log's start is kept. */
export function instantText(epoch: number): string {
  const whole = Math.floor(epoch);
  const micro = Math.round((epoch - whole) * 1e6);
  const [seconds] = new Date((whole + Math.floor(micro / 1e6)) * 1000).toISOString().split('.');
  const fraction = String(micro % 1e6)
    .padStart(6, '0')
    .replace(/0+$/, '');
  return `${seconds}${fraction === '' ? '' : `.${fraction}`}Z`;
}

/** Text that reads back as the same number. A quantity without a unit of its own for steps has them as bare numbers. */
function stepText(quantity: ChannelFacts['quantity'], step: number): string {
  const unit = STEP_KIND[quantity]?.unit ?? '1';
  return unit === '1' ? String(step) : `${step} ${unit}`;
}
