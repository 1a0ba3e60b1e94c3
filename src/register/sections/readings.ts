/** Readings by hand: what a person read off a display, in a run. */
import {
  figureOfReading,
  HAND_QUANTITIES,
  HAND_SHOWS,
  type HandQuantity,
  type HandReading,
  phasesOfReading,
} from '../../figures/hand/hand-reading.ts';
import { MEASURED_AT, type MeasuredAt } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { keyPlace, mapsOf } from '../values/mapping.ts';
import { isSnakeName, meant, oneOf, SNAKE_RULE } from '../values/names.ts';
import {
  CLOCK,
  CURRENT,
  ENERGY,
  type Kind,
  POWER,
  SOUND,
  STEP_KIND,
  TEMPERATURE,
  TIME,
  VOLTAGE,
} from '../values/quantity-kinds.ts';
import { quantityOf, type StatedQuantity, statedQuantity } from '../values/quantity-value.ts';
import { optional, readShape, required, shape, text, textOrList } from '../values/shape.ts';
import type { Inherited } from '../values/stated-value.ts';
import { cut, idOf, repeatableTextsOf, wordOf } from '../values/values.ts';
import type { ListNode, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

/** Phases that are found by themselves in a run. */
const OF_PHASES = ['idle', 'load'];

export const READING = shape({
  quantity: required(text, 'what was read', { words: HAND_QUANTITIES }),
  value: required(textOrList, 'what the display said, or one value for each time that it was read', {
    means: 'a number with its unit, or a list of them',
    example: '71.2 °C',
  }),
  phase: optional(text, 'the phase in which it was read', { words: OF_PHASES, example: 'load' }),
  at_time: optional(text, 'when it was read, since the first row of the log, in the place of `phase`', {
    quantity: TIME,
    example: '40 min',
  }),
  shows: optional(text, 'the level at that time, the highest that the display kept, or where it settled', {
    words: HAND_SHOWS,
    otherwise: 'level',
  }),
  at: optional(text, 'where a current, voltage or power was read', { words: MEASURED_AT, example: 'board input' }),
  instrument: optional(text, 'what it was read off; one of `instruments`', { form: 'id', example: 'inline-meter' }),
  step: optional(text, "the display's step, where neither the instrument's resolution nor the last digit says it", {
    means: 'a number with the unit of the quantity',
  }),
  times: optional(text, 'how often the display said the same', { form: 'number', otherwise: '1', example: '5' }),
  name: optional(text, 'its name, where several readings are of one kind', { form: 'name', example: 'bench_meter' }),
});

const measured = (kind: Kind): Kind => ({ ...kind, options: { ...kind.options, unstated: 'unknown' } });
const KINDS: Readonly<Record<HandQuantity, Kind>> = {
  temperature: measured(TEMPERATURE),
  current: measured(CURRENT),
  voltage: measured(VOLTAGE),
  power: measured(POWER),
  energy: measured(ENERGY),
  clock: measured(CLOCK),
  sound_level: measured(SOUND),
};

/** A reading as stated; where it says a time, its phase is told when the run's phases are known. */
export interface StatedReading extends Omit<HandReading, 'phase'> {
  readonly phase?: { readonly name: string; readonly place: Place };
  /** s on the run's clock. */
  readonly atTime?: { readonly seconds: number; readonly place: Place };
  readonly instrumentPlace?: Place;
}

/** The readings of a run, in the author's order. */
export function readReadings(items: ListNode | undefined, place: Place, report: Report): StatedReading[] {
  return mapsOf(items, 'readings', place, report).flatMap((node) => {
    const reading = report.whole(() => readingOf(node, report));
    return reading ? [reading] : [];
  });
}

function readingOf(node: MapNode, report: Report): StatedReading | undefined {
  const fields = readShape(READING, node, 'a reading', node.place, report);
  const quantity = wordOf(fields.quantity, 'quantity', HAND_QUANTITIES, report);
  const nodes = repeatableTextsOf(fields.value, 'value', keyPlace(node, 'value'), report) ?? [];
  if (!quantity || nodes.length === 0) return undefined;
  const stated = nodes.flatMap((each) => statedQuantity(each, 'value', KINDS[quantity], report) ?? []);
  const read = stated.map((each) => quantityOf(each, 'check', ''));
  tellUncertainty(nodes, read, report);
  const step = fields.step && STEP_KIND[quantity] && statedQuantity(fields.step, 'step', STEP_KIND[quantity], report);
  const times = timesOf(fields.times, nodes, report);
  const at = wordOf(fields.at, 'at', MEASURED_AT, report);
  const instrument = idOf(fields.instrument, 'instrument', report);
  const atTime = statedQuantity(fields.at_time, 'at_time', TIME, report);
  const name = nameOf(fields.name, report);
  if (fields.phase && fields.at_time)
    report.error('bad-reading', fields.at_time.place, 'a reading says both `phase` and `at_time`', {
      remedy: 'keep one of the two',
    });
  return {
    quantity,
    values: read.map(({ value }) => value),
    times,
    ...(step ? { step: quantityOf(step, 'check', '').value } : {}),
    lastDigit: Math.min(...read.map(({ step: last }) => last ?? 0)),
    ...(fields.phase ? { phase: { name: fields.phase.text, place: fields.phase.place } } : {}),
    ...(atTime ? { atTime: { seconds: secondsOf(atTime), place: fields.at_time!.place } } : {}),
    shows: wordOf(fields.shows, 'shows', HAND_SHOWS, report) ?? 'level',
    ...(at ? { at: at as MeasuredAt } : {}),
    ...(instrument === undefined ? {} : { instrument, instrumentPlace: fields.instrument!.place }),
    ...(name === undefined ? {} : { name }),
    text: nodes.map((each) => each.text).join(', '),
    place: node.place,
  };
}

/** A display shows no `±`: how sure a reading is comes from the display's step and the instrument's accuracy. */
function tellUncertainty(nodes: readonly TextNode[], read: readonly Quantity[], report: Report): void {
  if (read.length !== nodes.length) return;
  for (const [i, node] of nodes.entries())
    if (read[i]!.parts)
      report.error('bad-reading', node.place, `\`value\` is \`${cut(node.text)}\`, and a display shows no \`±\``, {
        expected: 'what the display said, such as `9.50 W`',
        remedy: 'state the accuracy below `measures` of the instrument, and name it here with `instrument`',
      });
}

function secondsOf(stated: StatedQuantity): number {
  return quantityOf(stated, 'check', '').value;
}

/** As often as there are values, or as it says of one. */
function timesOf(node: TextNode | undefined, values: readonly TextNode[], report: Report): number {
  if (!node) return values.length;
  const times = /^[1-9]\d{0,5}$/.test(node.text) ? Number(node.text) : 0;
  if (times > 0 && (values.length === 1 || times === values.length)) return times;
  report.error('bad-reading', node.place, `\`times\` is \`${cut(node.text)}\``, {
    expected:
      values.length === 1
        ? 'how often it was read, all alike: a whole number from 1 on'
        : `the ${values.length} values that stand there`,
    remedy: 'remove it where each time has its own value, or write one value',
  });
  return values.length;
}

function nameOf(node: TextNode | undefined, report: Report): string | undefined {
  if (!node || isSnakeName(node.text)) return node?.text;
  report.error('bad-name', node.place, `a reading is named \`${cut(node.text)}\``, { expected: SNAKE_RULE });
  return undefined;
}

/** Readings with their phases, checked against the run; those of which no figure is made are problems. */
export function placedReadings(
  stated: readonly StatedReading[],
  { phases, instruments, channels }: Pick<Inherited, 'phases' | 'instruments'> & { readonly channels: readonly string[] },
  report: Report,
): HandReading[] {
  const declared = phases === undefined || phases.value === 'auto' ? [] : phases.value;
  const listed = (instruments?.value ?? []).map(({ value }) => value);
  const known = new Set([...channels, ...OF_PHASES, ...declared.map(({ name }) => name)]);
  const seen = new Set<string>();
  return stated.flatMap(({ phase, atTime, instrumentPlace, ...reading }) => {
    const within = atTime && declared.find(({ from, to }) => atTime.seconds >= from && atTime.seconds <= to);
    if (atTime && !within)
      report.error('bad-reading', atTime.place, 'the time of a reading is in no declared phase', {
        expected: 'phases `from .. to` that hold it, or the `phase` itself',
      });
    if (reading.instrument !== undefined && !listed.includes(reading.instrument))
      report.error(
        'instrument-not-listed',
        instrumentPlace!,
        `a reading is by \`${reading.instrument}\`, which is not in the run's list of instruments`,
        {
          expected: listed.length > 0 ? oneOf(listed) : 'a list `instruments` in the run or in its setup',
          remedy: meant(reading.instrument, listed).remedy ?? `add \`${reading.instrument}\` to \`instruments\``,
        },
      );
    const placed: HandReading = { ...reading, phase: within?.name ?? phase?.name ?? null };
    if (reading.quantity !== 'voltage' && !figureOfReading(placed)) tellNoFigure(placed, phase?.place ?? reading.place, report);
    tellTwice(placed, seen, report);
    if (placed.name !== undefined && known.has(placed.name))
      report.error('bad-reading', placed.place, `a reading is named \`${placed.name}\`, as a channel or a phase is`, {
        expected: 'a name of its own, for it stands in the addresses of figures',
        remedy: 'name it after its display, for instance `name: bench_meter`',
      });
    return [placed];
  });
}

function tellNoFigure({ quantity, phase, shows }: HandReading, place: Place, report: Report): void {
  const what = `a ${quantity.replaceAll('_', ' ')}${phase === null ? ' without a phase' : ` of the phase \`${phase}\``}`;
  report.error('bad-reading', place, `no figure is made of ${what}${shows === 'level' ? '' : ` that shows \`${shows}\``}`, {
    expected: `a ${quantity.replaceAll('_', ' ')} ${phasesOfReading(quantity)}`,
    remedy: 'write for instance `phase: load`',
  });
}

/** Two readings of one kind have one address unless they are named. */
function tellTwice(reading: HandReading, seen: Set<string>, report: Report): void {
  const { quantity, phase, shows, name = '', place } = reading;
  const kind = [quantity, phase ?? '', shows, name].join(' ');
  if (seen.has(kind))
    report.error(
      'bad-reading',
      place,
      `a second ${quantity.replaceAll('_', ' ')} of the same phase${name === '' ? '' : ` with the name \`${name}\``}`,
      {
        expected: 'one entry with a list of its values, or readings of different things told apart by a `name`',
        remedy: 'write `value: [0.62 A, 0.64 A]`, or give the second a `name`',
      },
    );
  seen.add(kind);
}
