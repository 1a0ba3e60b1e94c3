/** Quantities as authors write them in front matter: `2.6 GHz`, `22.4 ± 0.5 °C`, `22.4 ± 0.5 °C (k=2)`, `22.4(5) °C`. */
import { COVERAGE_EXPECTED, type Coverage, distributionOf, splitCoverage, standardOfHalfWidth } from './coverage.ts';
import { type Numeral, numeralAt } from './numeral.ts';
import { fail, isParseFailure, type ParseFailure } from './parse-failure.ts';
import type { Quantity, Source } from './quantity.ts';
import { exact, independent, unknown } from './uncertainty.ts';
import { nearestUnit, type ReadingKind, readUnit, toCanonical, type Unit } from './units.ts';

export { isParseFailure, type ParseFailure };

export interface ParseOptions {
  /** What a quantity without `±` is: exact (a setting, a rating; the default), or of unknown uncertainty (something measured). */
  readonly unstated?: 'exact' | 'unknown';
  /** An absolute temperature, a difference, or a score; see readUnit. */
  readonly kind?: ReadingKind;
  /** Whether a number may stand without a unit, as a ratio does. Off by default. */
  readonly bare?: boolean;
}

const EXPECTED = 'a number and a unit, such as 22.4 °C or 22.4 ± 0.5 °C';

/** In °C: BIPM, SI Brochure, 9th ed., 2.3.1. */
const ABSOLUTE_ZERO = -273.15;

const SIGN = /[ \u00a0]*(?:±|\+\/?-)[ \u00a0]*/;

/** A number with what was said of its uncertainty, in the author's unit. */
interface Statement {
  readonly value: number;
  /** Standard uncertainty; null where none was stated. */
  readonly u: number | null;
  /** How `u` was stated. */
  readonly coverage: Coverage;
  readonly step: number;
  readonly padded: boolean;
  readonly unit: Unit;
}

/**
 * Reads a quantity. `± a` are limits, taken as rectangular (u = a/√3, JCGM 100:2008, 4.3.7), unless `(k=2)`, `(95 %)` or `(standard)`
 * follows; `22.4(5)` is a standard uncertainty in the last digits (JCGM 100:2008, 7.2.2). The uncertainty belongs to `source`.
 * The result's step is one unit of the last digit written; an exact one has none, and keeps the zeros that it was written with (2.0 GHz).
 */
export function parseQuantity(text: string, source: Source, options: ParseOptions = {}): Quantity | ParseFailure {
  const statement = read(text, options);
  if (isParseFailure(statement)) return statement;
  const { value, u, coverage, step, padded, unit } = statement;
  const canonical = toCanonical(value, unit);
  const size = (width: number) => toCanonical(width, { ...unit, offset: 0 });
  for (const part of [canonical, u === null ? 0 : size(u)]) {
    if (!(Math.abs(part) < LARGEST)) return fail(`${text.trim()} is too large`, 0, 'a smaller number');
    if (part !== 0 && Math.abs(part) < 1 / LARGEST) return fail(`${text.trim()} is too small`, 0, 'a larger number, or 0');
  }
  if (unit.canonical === '°C' && canonical < ABSOLUTE_ZERO)
    return fail(`${text.trim()} is below absolute zero`, 0, 'a temperature above −273.15 °C');
  if (u !== null) {
    const stated = { ...source, ...distributionOf(coverage) };
    return { ...independent(canonical, unit.canonical, size(u), stated), step: size(step) };
  }
  if (options.unstated !== 'unknown') {
    const keeps = padded && unit.decimal !== undefined;
    return { ...exact(canonical, unit.canonical), ...(keeps && { lastDigit: size(step) }) };
  }
  return { ...unknown(canonical, unit.canonical), step: size(step) };
}

/** Beyond it, squares and quotients of what is stated leave what doubles can hold. */
const LARGEST = 1e100;

function read(text: string, options: ParseOptions): Statement | ParseFailure {
  const start = text.length - text.trimStart().length;
  const { rest, coverage, unread } = splitCoverage(text.trimEnd());
  if (unread !== undefined) return fail(`${unread} does not say what ± means`, rest.length + 1, COVERAGE_EXPECTED);
  const bracketed = /^\(([^()]*)\)([ \u00a0]*[^()±]+(?:\([A-Za-z]+\))?)$/.exec(rest.slice(start));
  if (bracketed) return readFrom(`${' '.repeat(start + 1)}${bracketed[1]}${bracketed[2]}`, start + 1, coverage, options);
  return readFrom(rest, start, coverage, options);
}

function readFrom(text: string, start: number, coverage: Coverage | undefined, options: ParseOptions): Statement | ParseFailure {
  const number = numeralAt(text, start, EXPECTED);
  if (isParseFailure(number)) return number;
  const sign = SIGN.exec(text.slice(number.end));
  if (sign && sign.index > 0) return readTwoUnits(text, number, number.end + sign.index, coverage, options);
  const spread = spreadAt(text, number.end, number.step);
  if (isParseFailure(spread)) return spread;
  if (coverage !== undefined && spread.written !== 'plus-minus') {
    return fail('a coverage is stated, but no ± before it', text.length, 'a number ± a half width, then the coverage');
  }
  const unit = unitAt(text, spread.end, options);
  if (isParseFailure(unit)) return unit;
  const meant = spread.written === 'brackets' ? 'standard' : (coverage ?? 'rectangular');
  const u = spread.written === 'none' ? null : standardOfHalfWidth(spread.width, meant);
  return { value: number.value, u, coverage: meant, step: number.step, padded: number.padded, unit };
}

/** Reads `12 V ± 5 %` and `22.4 °C ± 0.5 K`: the half width has a unit of its own (NIST SP 811, 7.7). */
function readTwoUnits(
  text: string,
  number: Numeral,
  at: number,
  coverage: Coverage | undefined,
  options: ParseOptions,
): Statement | ParseFailure {
  const unit = unitAt(text.slice(0, at), number.end, options);
  if (isParseFailure(unit)) return unit;
  const spread = spreadAt(text, at, number.step);
  if (isParseFailure(spread)) return spread;
  const own = unitAt(text, spread.end, { kind: 'difference' });
  if (isParseFailure(own)) return own;
  const canonical = unit.canonical === '°C' ? 'K' : unit.canonical;
  const share = own.canonical === '1' && canonical !== '1';
  if (share && unit.canonical === '°C') return fail('a share of a Celsius temperature', spread.end, 'limits in K or °C');
  if (!share && own.canonical !== canonical)
    return fail(`limits in ${own.canonical} of a value in ${canonical}`, spread.end, `limits in ${canonical} or %`);
  if (share && number.value === 0) return fail('a share of nothing', spread.end, `limits in ${canonical}`);
  const width = toCanonical(spread.width, own) * (share ? Math.abs(number.value) : 1 / unit.factor);
  const meant = coverage ?? 'rectangular';
  return {
    value: number.value,
    u: standardOfHalfWidth(width, meant),
    coverage: meant,
    step: number.step,
    padded: number.padded,
    unit,
  };
}

interface Spread {
  readonly written: 'none' | 'plus-minus' | 'brackets';
  readonly width: number;
  readonly end: number;
}

/** Reads `± 0.5` or `(5)` after a number whose last digit counts `step`. */
function spreadAt(text: string, offset: number, step: number): Spread | ParseFailure {
  const brackets = /^\((\d+)\)/.exec(text.slice(offset));
  if (brackets)
    return positive({ written: 'brackets', width: Number(brackets[1]) * step, end: offset + brackets[0].length }, offset);
  if (text[offset] === '(')
    return fail(
      `no digits in the brackets at "${text.slice(offset)}"`,
      offset,
      'digits of the standard uncertainty, as in 22.4(5) °C',
    );
  const sign = SIGN.exec(text.slice(offset));
  if (sign?.index !== 0) return { written: 'none', width: 0, end: offset };
  const width = numeralAt(text, offset + sign[0].length, 'the half width after ±, such as ± 0.5');
  if (isParseFailure(width)) return width;
  return positive({ written: 'plus-minus', width: width.value, end: width.end }, offset + sign[0].length);
}

function positive(spread: Spread, offset: number): Spread | ParseFailure {
  return spread.width > 0 ? spread : fail('the uncertainty is not above zero', offset, 'a half width above zero, or none');
}

function unitAt(text: string, offset: number, options: ParseOptions): Unit | ParseFailure {
  const spelling = text.slice(offset).trim();
  const place = offset + text.slice(offset).length - text.slice(offset).trimStart().length;
  if (spelling === '') {
    if (options.bare) return { canonical: '1', factor: 1, offset: 0, decimal: 0 };
    return fail(`${text.trim()} has no unit`, text.trimEnd().length, EXPECTED);
  }
  const unit = readUnit(spelling, options.kind);
  if (unit) return unit;
  const near = nearestUnit(spelling);
  return fail(
    `unknown unit ${spelling}`,
    place,
    near === undefined ? 'a unit such as °C, K, s, Hz, A, V, W or J' : `did you mean ${near}?`,
  );
}
