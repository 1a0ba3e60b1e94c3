/** Figures from readings off a display: the same as a log would give, as sure as the display and its instrument are. */
import { divide, multiply, subtract } from '../../quantities/arithmetic.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { isReason, type Of } from '../absent.ts';
import type { FigureName } from '../catalogue.ts';
import type { RunContext } from '../context.ts';
import { type FigureMap, type From, isPresent, type PresentFigure } from '../figure.ts';
import { counted } from '../in-words.ts';
import { orRefused } from '../joined.ts';
import type { Entry } from '../soak.ts';
import { energiesOf, levelOf } from '../sound/sound.ts';
import { correctionOf, errorsOf, instrumentOf, kindOf, quantityOf } from '../sources.ts';
import { figureOfReading, HAND_UNITS, type HandReading } from './hand-reading.ts';

/** Where several readings of one kind have no name, and where the log gives the figure already. */
const UNNAMED = 'display';
/** Ends an address that another figure has already, such as that of a channel named `display`. */
const BESIDE = '_by_hand';

/**
 * Adds what was read by hand to the figures of the log. A figure that the log gives keeps its address, and the reading stands beside it under
 * its own name; one that the log lacks is the reading's.
 */
export function withHandFigures(context: RunContext, logged: FigureMap): FigureMap {
  const readings = context.readings ?? [];
  if (readings.length === 0) return logged;
  const figures = new Map(logged);
  const own = new Map<string, PresentFigure>();
  const taken = (address: string) => {
    const found = figures.get(address);
    return found !== undefined && isPresent(found);
  };
  const put = (name: FigureName, figure: PresentFigure, { phase, name: called }: Pick<HandReading, 'phase' | 'name'>) => {
    const bare = name === 'energy' && phase !== null ? `energy.${phase}` : name;
    let address: string = taken(bare) ? `${bare}.${called ?? UNNAMED}` : bare;
    while (taken(address)) address += BESIDE;
    figures.set(address, figure);
    own.set(address, figure);
  };
  for (const reading of readings) {
    const name = figureOfReading(reading);
    if (name) put(name, figureOf(name, readOff(context, reading, addressOf(name, reading)), reading), reading);
  }
  for (const [name, figure, reading] of powersOf(context, readings)) put(name, figure, reading);
  for (const [name, why] of unplacedSupply(context, readings)) {
    const found = figures.get(name);
    if (found && !isPresent(found)) figures.set(name, { ...found, absent: 'different-places', why });
  }
  for (const [address, figure] of risesOf(context, own)) {
    const known = figures.get(address);
    if (!known || !isPresent(known)) figures.set(address, figure);
  }
  return figures;
}

function addressOf(name: FigureName, { phase, name: called }: HandReading): string {
  return [name, ...(name === 'energy' && phase !== null ? [phase] : []), ...(called === undefined ? [] : [called])].join('.');
}

function figureOf(name: FigureName, quantity: Quantity, ...readings: readonly [HandReading, ...HandReading[]]): PresentFigure {
  const [first] = readings;
  const of: Of = {
    ...(first.phase === null ? { over: 'the whole run' } : { phase: first.phase }),
    ...(first.at ? { at: first.at } : {}),
    read: [...new Set(readings.map(timesRead))].join(' and '),
  };
  return { name, quantity, from: fromOf(readings), inferred: [...new Set(readings.flatMap(inferredOf))], of };
}

function fromOf(readings: readonly HandReading[]): From {
  return { columns: [], rows: null, file: readings[0]!.place.file };
}

/** "read off a display once", "read off a display 5 times, all alike". */
function timesRead({ values, times }: HandReading): string {
  if (times === 1) return 'read off a display once';
  return `read off a display ${counted(times, 'time')}${new Set(values).size === 1 ? ', all alike' : ''}`;
}

function inferredOf(reading: HandReading): string[] {
  const spread = new Set(reading.values).size > 1;
  return [
    ...(reading.step === undefined && reading.lastDigit > 0
      ? ['The step of the display is taken from the last digit that was written down.']
      : []),
    ...(spread ? [] : ['It was read at a moment: how it varied meanwhile is not known and not in its interval.']),
  ];
}

/**
 * The value of a reading, or the mean of several. What a step hides is an error anywhere within half a step (JCGM 100:2008, F.2.2.1 and 4.3.7).
 * Readings that scatter add s/√n. One reading, or several that all show the same, may have been taken just before the last digit turned: as
 * much again (common practice, no source), so that two displays one step apart are not told apart.
 */
function readOff(context: RunContext, reading: HandReading, address: string): Quantity {
  const { quantity, at, instrument, times } = reading;
  const sensor = { quantity, step: null, ...(at ? { at } : {}), ...(instrument ? { instrument } : {}) };
  const values = reading.values.map((value) => value + (correctionOf(context, sensor)?.value ?? 0));
  const value = meanOf(quantity, values);
  const resolution = instrumentOf(context, sensor)?.resolution;
  const step = reading.step ?? (resolution?.[quantity] ?? resolution?.[kindOf(sensor)])?.value ?? reading.lastDigit;
  const errors = errorsOf(context, { ...sensor, step }, value);
  const hidden = step / Math.sqrt(12);
  const scatter = values.length > 1 ? sampleDeviation(values) / Math.sqrt(values.length) : 0;
  const part = (kind: string, title: string, share: number, more: Pick<Part['source'], 'dof' | 'distribution'>): Part => ({
    source: { id: `run:${context.run}/${address}/${kind}`, title: `${title} ${address} in ${context.run}`, ...more },
    share,
  });
  const ofMoment =
    scatter > 0
      ? part('sampling', 'scatter of readings of', scatter, { dof: times - 1 })
      : part('moment', 'last digit at the moment of reading,', hidden, { dof: null, distribution: 'rectangular' });
  const ofStep = part('display', 'step of the display behind', hidden, { dof: null, distribution: 'rectangular' });
  return quantityOf(value, HAND_UNITS[quantity], [...errors.parts, ofStep, ofMoment], { stated: errors.stated, step });
}

/** Levels average by energy. */
function meanOf(quantity: HandReading['quantity'], values: readonly number[]): number {
  if (quantity !== 'sound_level' || values.length === 1) return mean(values);
  const { loudest, energies } = energiesOf(Float64Array.from(values));
  return levelOf(loudest, mean([...energies]));
}

/** Currents times a voltage that was read in the same phase at the same place, or times the supply that is stated for it; direct current alone. */
function powersOf(context: RunContext, readings: readonly HandReading[]): [FigureName, PresentFigure, HandReading][] {
  const measured = (phase: string | null) =>
    readings.some((each) => each.quantity === 'power' && each.shows === 'level' && each.phase === phase);
  return readings.flatMap((current): [FigureName, PresentFigure, HandReading][] => {
    const name = figureOfReading({ ...current, quantity: 'power' });
    if (current.quantity !== 'current' || !name || current.at === 'wall' || measured(current.phase)) return [];
    const voltage = voltageOf(current, readings);
    if (voltage === null) return [];
    const { supply } = context;
    const stated = supply?.at === current.at && supply?.voltage.unit === 'V' ? supply.voltage : undefined;
    const amperes = readOff(context, current, addressOf('load_current', { ...current, name: named(current) }));
    const volts = voltage ? readOff(context, voltage, `voltage.${named(voltage)}`) : stated;
    const power = volts && orRefused(multiply(amperes, volts));
    if (!power || isReason(power)) return [];
    const how = voltage ? 'current × voltage' : `current × stated supply of ${printQuantity(volts).text}`;
    const figure = voltage ? figureOf(name, power, current, voltage) : figureOf(name, power, current);
    return [[name, { ...figure, of: { ...figure.of, power: how } }, current]];
  });
}

/** Why a current that was read makes no power with a supply that is stated without its place. */
function unplacedSupply({ supply }: RunContext, readings: readonly HandReading[]): [FigureName, string][] {
  if (!supply || supply.at !== undefined) return [];
  return readings.flatMap((current): [FigureName, string][] => {
    const name = figureOfReading({ ...current, quantity: 'power' });
    if (current.quantity !== 'current' || !name || current.at === undefined || current.at === 'wall') return [];
    const asStated = `${printQuantity(supply.voltage).text} at ${current.at}`;
    return [
      [
        name,
        `The stated supply makes no power of the current that was read, for it lacks its place: state \`supply: ${asStated}\`.`,
      ],
    ];
  });
}

function named({ phase, name }: HandReading): string {
  return [phase ?? '', ...(name === undefined ? [] : [name])].join('.');
}

/**
 * The voltage that belongs to a current: of the same phase, place and name, else the only one there unless it bears another current's name.
 * Undefined where none was read, null where it cannot be told which.
 */
function voltageOf(current: HandReading, readings: readonly HandReading[]): HandReading | undefined | null {
  const beside = readings.filter(({ phase, at, shows }) => shows === 'level' && phase === current.phase && at === current.at);
  const voltages = beside.filter(({ quantity }) => quantity === 'voltage');
  const same = voltages.find(({ name }) => name === current.name);
  if (same || voltages.length === 0) return same;
  const [only] = voltages;
  const ofAnother = beside.some(({ quantity, name }) => quantity === 'current' && name !== undefined && name === only!.name);
  return voltages.length === 1 && !ofAnother ? only : null;
}

/** What a settled temperature that was read comes to over the stated ambient, and by the power that was read. */
function risesOf({ ambient }: RunContext, own: ReadonlyMap<string, PresentFigure>): Entry[] {
  const steady = own.get('steady_temperature');
  if (!steady || !ambient) return [];
  const rise = orRefused(subtract(steady.quantity, ambient));
  if (isReason(rise)) return [];
  const of: Of = { ...steady.of, ambient: 'stated' };
  const found: PresentFigure = { ...steady, name: 'temperature_rise', quantity: rise, of };
  const power = own.get('load_power');
  const quotient = power && power.quantity.value > 0 ? orRefused(divide(rise, power.quantity)) : undefined;
  if (!power || !quotient || isReason(quotient)) return [['temperature_rise', found]];
  const inferred = [...new Set([...(steady.inferred ?? []), ...(power.inferred ?? [])])];
  return [
    ['temperature_rise', found],
    [
      'rise_per_watt',
      {
        ...steady,
        name: 'rise_per_watt',
        quantity: quotient,
        inferred,
        of: { ...of, ...(power.of?.at ? { power_at: power.of.at } : {}) },
      },
    ],
  ];
}
