/** The declaration of a run whose log stays with its author, so that it reads the cleaned readings instead. */
import { cleanedNames } from '../../intake/cleaned.ts';
import { mapUnder, type Plain, type PlainFile, type PlainMap } from '../../register/portable/plain-values.ts';
import { STEP_KIND } from '../../register/values/quantity-kinds.ts';
import type { ChannelFacts, LogSummary } from '../steps/runs/run-step.ts';

/** Keys of a run that speak of lines of a log, which the cleaned readings have behind them. */
const OF_LINES = ['repairs', 'known'];
/** Keys of a channel that speak of its column in the log. */
const OF_COLUMN = ['column', 'unit', 'unit_reason', 'missing', 'step', 'log'];

/**
 * @param log - the log that stays with its author, one of several or the only one.
 * @param path - of the cleaned readings, below data/.
 * @param timed - whether something beside the log is found in it by the time of day. If not, that stays with the author.
 */
export function readingCleaned(run: PlainFile, log: LogSummary, path: string, timed: boolean): PlainFile {
  const { channels, name } = log;
  const keys = new Map(run.keys);
  const zone = mapUnder(ownLog(run, name), 'time').get('zone');
  for (const key of OF_LINES) leaveOut(keys, key, log);
  const declared = mapUnder(keys, 'channels');
  const cleaned = new Map<string, Plain>([
    ['file', path],
    [
      'time',
      new Map<string, Plain>([
        ['column', cleanedNames(channels).time],
        ['format', 'elapsed'],
        ['unit', 's'],
        ...(timed && zone !== undefined ? [['zone', zone] as const] : []),
        ...(timed && log.time.start !== null && log.alignment === null ? [['start', instantText(log.time.start)] as const] : []),
      ]),
    ],
    ...offsetOf(log, ownLog(run, name).get('offset')),
    ['share', 'as it came'],
  ]);
  if (name === '') keys.set('log', cleaned);
  else keys.set('logs', new Map([...mapUnder(keys, 'logs'), [name, cleaned]]));
  const own = channels.map((channel) => [channel.name, cleanedChannel(mapUnder(declared, channel.name), channel, name)] as const);
  const others = name === '' ? [] : [...declared].filter(([key]) => !own.some(([other]) => other === key));
  keys.set('channels', inOrder([...declared.keys()], new Map<string, Plain>([...others, ...own])));
  return { ...run, keys };
}

/** What a run says of a log. */
export function ownLog(run: PlainFile, name: string): PlainMap {
  return name === '' ? mapUnder(run.keys, 'log') : mapUnder(mapUnder(run.keys, 'logs'), name);
}

/** As the run declares them: the first channel of a quantity is its primary. */
function inOrder(order: readonly string[], all: PlainMap): PlainMap {
  const place = (name: string) => (order.includes(name) ? order.indexOf(name) : order.length);
  return new Map([...all].sort(([a], [b]) => place(a) - place(b)));
}

/** Where its first row stands: the cleaned readings tell no instant. What the loads tell, they tell of the cleaned readings too. */
function offsetOf({ alignment }: LogSummary, stated: Plain | undefined): [string, Plain][] {
  if (!alignment) return [];
  if (stated === 'by load edge') return [['offset', stated]];
  const { at, u, distribution } = alignment;
  const unsure = distribution ? ` ± ${u * Math.sqrt(3)} s` : ` ± ${u} s (standard)`;
  return [['offset', `${at} s${u === 0 ? '' : unsure}`]];
}

/** Takes away what speaks of lines of this log; channels and phases stay known. */
function leaveOut(keys: Map<string, Plain>, key: string, { name, alignment }: LogSummary): void {
  const entries = keys.get(key);
  if (name === '') keys.delete(key);
  if (name === '' || !Array.isArray(entries)) return;
  const left = entries.filter((entry: Plain) => {
    if (!(entry instanceof Map)) return false;
    const of = entry.get('log');
    return (key === 'known' && !entry.has('lines')) || (of === undefined ? alignment !== null : of !== name);
  });
  if (left.length > 0) keys.set(key, left);
  else keys.delete(key);
}

function cleanedChannel(declared: PlainMap, { name, quantity, unit, step }: ChannelFacts, log: string): PlainMap {
  const of: (readonly [string, Plain])[] = log === '' ? [] : [['log', log]];
  const own = [...declared].filter(([key]) => !OF_COLUMN.includes(key));
  // A channel of a range of columns has no entry of its own.
  const kept: (readonly [string, Plain])[] = declared.size > 0 ? own : [['quantity', quantity]];
  if (quantity === 'throttle_flag') return new Map([...kept, ['column', name], ...of]);
  return new Map<string, Plain>([
    ...kept,
    ['column', name],
    ...of,
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
