/** Spellings of units as logs, data sheets and authors write them, as plain data. */

/** A unit symbol: what it measures, how big it is, and the SI prefixes that people put before it. */
export interface UnitSymbol {
  /** Canonical unit that it is a multiple of. */
  readonly of: string;
  /** How many canonical units; 1 where left out. */
  readonly ratio?: number;
  /** Power of ten besides. */
  readonly decimal?: number;
  /** Prefix letters; none where left out. */
  readonly prefixes?: string;
}

/** A map, so that a spelling such as `constructor` finds nothing. */
function table<T>(entries: Readonly<Record<string, T>>): ReadonlyMap<string, T> {
  return new Map(Object.entries(entries));
}

/** Units outside the SI after NIST SP 811 (2008), Table 6 and Appendix B. */
export const SYMBOLS: ReadonlyMap<string, UnitSymbol> = table({
  V: { of: 'V', prefixes: 'nµmkM' },
  A: { of: 'A', prefixes: 'pnµmk' },
  W: { of: 'W', prefixes: 'nµmkMG' },
  J: { of: 'J', prefixes: 'pnµmkMG' },
  Hz: { of: 'Hz', prefixes: 'kMGT' },
  K: { of: 'K', prefixes: 'µmk' },
  s: { of: 's', prefixes: 'pnµm' },
  min: { of: 's', ratio: 60 },
  h: { of: 's', ratio: 3600 },
  d: { of: 's', ratio: 86400 },
  Wh: { of: 'J', ratio: 3600, prefixes: 'µmkM' },
  Ah: { of: 'A·s', ratio: 3600, prefixes: 'µm' },
  Ω: { of: 'V/A', prefixes: 'nµmkMG' },
  rpm: { of: 'rpm' },
  dB: { of: 'dB' },
  '1': { of: '1' },
  '%': { of: '1', decimal: -2 },
  '‰': { of: '1', decimal: -3 },
  ppm: { of: '1', decimal: -6 },
});

export const PREFIXES: ReadonlyMap<string, number> = table({ p: -12, n: -9, µ: -6, m: -3, k: 3, M: 6, G: 9, T: 12 });

/** A temperature scale: canonical value = reading × ratio + offset, in °C; differences are in K. Fahrenheit: NIST SP 811 (2008), B.6. */
export interface Scale {
  readonly ratio: number;
  readonly decimal?: number;
  readonly offset: number;
}

export const SCALES: ReadonlyMap<string, Scale> = table({
  '°C': { ratio: 1, offset: 0 },
  'm°C': { ratio: 1, decimal: -3, offset: 0 },
  '°F': { ratio: 5 / 9, offset: -160 / 9 },
});

/** Read as an absolute temperature only where the quantity is said to be one; else they are differences. */
export const KELVIN_SCALES: ReadonlyMap<string, Scale> = table({
  K: { ratio: 1, offset: -273.15 },
  mK: { ratio: 1, decimal: -3, offset: -273.15 },
});

/** Whole spellings that mean one of the symbols above. Compared after `tidy` in units.ts; those in lower case are compared so too. */
export const ALIASES: ReadonlyMap<string, string> = table({
  C: '°C',
  degC: '°C',
  'deg C': '°C',
  'deg. C': '°C',
  'degrees C': '°C',
  'degree C': '°C',
  degreesC: '°C',
  "'C": '°C',
  '`C': '°C',
  celsius: '°C',
  'deg celsius': '°C',
  'degrees celsius': '°C',
  'degree celsius': '°C',
  mC: 'm°C',
  mdegC: 'm°C',
  'milli°C': 'm°C',
  millidegree: 'm°C',
  millidegrees: 'm°C',
  'millidegree C': 'm°C',
  'millidegrees C': 'm°C',
  'millidegree celsius': 'm°C',
  'millidegrees celsius': 'm°C',
  degF: '°F',
  'deg F': '°F',
  'deg. F': '°F',
  'degrees F': '°F',
  "'F": '°F',
  fahrenheit: '°F',
  'degrees fahrenheit': '°F',
  kelvin: 'K',
  kelvins: 'K',
  ohm: 'Ω',
  ohms: 'Ω',
  mohm: 'mΩ',
  mOhm: 'mΩ',
  kohm: 'kΩ',
  kOhm: 'kΩ',
  volt: 'V',
  volts: 'V',
  millivolt: 'mV',
  millivolts: 'mV',
  amp: 'A',
  amps: 'A',
  ampere: 'A',
  amperes: 'A',
  milliamp: 'mA',
  milliamps: 'mA',
  milliampere: 'mA',
  milliamperes: 'mA',
  watt: 'W',
  watts: 'W',
  milliwatt: 'mW',
  milliwatts: 'mW',
  kilowatt: 'kW',
  kilowatts: 'kW',
  joule: 'J',
  joules: 'J',
  'watt hour': 'Wh',
  'watt hours': 'Wh',
  'watt-hours': 'Wh',
  'kilowatt hours': 'kWh',
  hertz: 'Hz',
  kilohertz: 'kHz',
  megahertz: 'MHz',
  gigahertz: 'GHz',
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  msec: 'ms',
  millisecond: 'ms',
  milliseconds: 'ms',
  usec: 'µs',
  microsecond: 'µs',
  microseconds: 'µs',
  nanosecond: 'ns',
  nanoseconds: 'ns',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  day: 'd',
  days: 'd',
  RPM: 'rpm',
  'dB(A)': 'dB',
  'dB(C)': 'dB',
  'dB(Z)': 'dB',
  dBA: 'dB',
  dBC: 'dB',
  'r/min': 'rpm',
  percent: '%',
  pct: '%',
});

/** Spellings that people read, by canonical unit, smallest first. */
export const READ: ReadonlyMap<string, readonly string[]> = table({
  '°C': ['°C', '°F', 'K'],
  K: ['mK', 'K'],
  s: ['ms', 's', 'min', 'h'],
  Hz: ['Hz', 'kHz', 'MHz', 'GHz'],
  A: ['µA', 'mA', 'A'],
  V: ['µV', 'mV', 'V'],
  W: ['µW', 'mW', 'W', 'kW'],
  J: ['mJ', 'J', 'kJ', 'MJ', 'mWh', 'Wh', 'kWh'],
  'V/A': ['mΩ', 'Ω', 'kΩ'],
  A·s: ['mAh', 'Ah'],
  '1': ['1', '%'],
});
