/** Names of units in words, one and many, with the spelling that `readUnit` takes. Names after NIST SP 811 (2008), Tables 1 to 6 and 9.2 (plurals). */

export interface UnitName {
  readonly symbol: string;
  readonly one: string;
  readonly many: string;
  /** Other words that are read, not written. */
  readonly also?: readonly string[];
}

const PREFIXES: Readonly<Record<string, string>> = {
  n: 'nano',
  µ: 'micro',
  m: 'milli',
  k: 'kilo',
  M: 'mega',
  G: 'giga',
  T: 'tera',
};

/** Units that take prefixes, with those that are said. */
const PREFIXED: readonly (readonly [symbol: string, prefixes: string, one: string, many: string, also?: string])[] = [
  ['V', 'nµmkM', 'volt', 'volts'],
  ['A', 'nµmk', 'amp', 'amps', 'ampere amperes'],
  ['W', 'nµmkMG', 'watt', 'watts'],
  ['J', 'nµmkMG', 'joule', 'joules'],
  ['Hz', 'kMGT', 'hertz', 'hertz'],
  ['s', 'nµm', 'second', 'seconds', 'sec secs'],
  ['Ω', 'nµmkMG', 'ohm', 'ohms'],
  ['Wh', 'µmkM', 'watt-hour', 'watt-hours', 'watthour watthours'],
  ['Ah', 'µm', 'amp-hour', 'amp-hours', 'ampere-hour ampere-hours'],
];

const WHOLE: readonly UnitName[] = [
  { symbol: '°C', one: 'degree', many: 'degrees', also: ['deg', '°', 'celsius', 'centigrade'] },
  {
    symbol: '°C',
    one: 'degree Celsius',
    many: 'degrees Celsius',
    also: ['degrees centigrade', 'degree centigrade', 'degrees c', 'degree c', 'deg c'],
  },
  { symbol: '°F', one: 'degree Fahrenheit', many: 'degrees Fahrenheit', also: ['degrees f', 'deg f', 'fahrenheit'] },
  { symbol: 'K', one: 'kelvin', many: 'kelvin', also: ['kelvins', 'degree kelvin', 'degrees kelvin'] },
  { symbol: 'mK', one: 'millikelvin', many: 'millikelvin', also: ['millikelvins'] },
  { symbol: 'min', one: 'minute', many: 'minutes', also: ['min', 'mins'] },
  { symbol: 'h', one: 'hour', many: 'hours', also: ['hr', 'hrs'] },
  { symbol: 'd', one: 'day', many: 'days' },
  {
    symbol: '%',
    one: 'percent',
    many: 'percent',
    also: ['per cent', 'pct', 'percentage point', 'percentage points', 'percent point', 'percent points'],
  },
  { symbol: '‰', one: 'per mille', many: 'per mille', also: ['per mil', 'permille'] },
  { symbol: 'ppm', one: 'part per million', many: 'parts per million' },
  { symbol: 'rpm', one: 'revolution per minute', many: 'revolutions per minute' },
];

function prefixed([symbol, prefixes, one, many, also = '']: (typeof PREFIXED)[number]): UnitName[] {
  const others = also.split(' ').filter((word) => word !== '');
  const own: UnitName = { symbol, one, many, also: others };
  const multiples = [...prefixes].map((letter) => {
    const prefix = PREFIXES[letter]!;
    return { symbol: letter + symbol, one: prefix + one, many: prefix + many, also: others.map((word) => prefix + word) };
  });
  return [own, ...multiples];
}

/** Every unit that has a name. Of two entries with one symbol the first is how it is spoken. */
const UNIT_NAMES: readonly UnitName[] = [...WHOLE, ...PREFIXED.flatMap(prefixed)];

const BY_SYMBOL = new Map([...UNIT_NAMES].reverse().map((name) => [name.symbol, name]));

const BY_WORDS = new Map(
  UNIT_NAMES.flatMap(({ symbol, one, many, also = [] }) =>
    [one, many, ...also].map((words) => [words.toLowerCase().replaceAll('-', ' '), symbol] as const),
  ),
);

/** The name of a symbol, or undefined. */
export function nameOfSymbol(symbol: string): UnitName | undefined {
  return BY_SYMBOL.get(symbol);
}

/** The symbol that words stand for; blanks stand for hyphens. Compared in lower case. */
export function symbolOfWords(words: string): string | undefined {
  return BY_WORDS.get(words);
}

const BY_NAME = new Map(UNIT_NAMES.flatMap((name) => [name.one, name.many].map((words) => [words.toLowerCase(), name] as const)));

/** The singular or plural of a unit's name as `written` in full; undefined for symbols and other spellings. */
export function namedWith(written: string, single: boolean): string | undefined {
  const name = BY_NAME.get(written.toLowerCase().replace('watt hour', 'watt-hour').replace('amp hour', 'amp-hour'));
  return name && (single ? name.one : name.many);
}
