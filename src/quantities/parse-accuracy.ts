/** Reads accuracy statements: sums of terms, the larger of two, tolerance classes of sensors. */
import { COVERAGE_EXPECTED, splitCoverage } from './coverage.ts';
import { nearest } from './nearest.ts';
import { numeralAt } from './numeral.ts';
import { fail, isParseFailure, type ParseFailure } from './parse-failure.ts';
import { SENSOR_CLASSES, sensorClass } from './sensor-classes.ts';
import type { Accuracy } from './stated-accuracy.ts';
import { nearestUnit, readUnit, toCanonical } from './units.ts';

const EXPECTED = 'an accuracy such as ± 0.5 °C, 0.5 % + 2 digits, 1 % of range 5 A, or type K class 1';

/** One term: a share of the reading, an absolute limit, or digits of the display. */
interface Term {
  readonly ofReading: number;
  readonly absolute: number;
  readonly digits: number;
  readonly unit?: string;
}

const NOTHING: Term = { ofReading: 0, absolute: 0, digits: 0 };

/**
 * Reads an accuracy. Terms joined by `+` add up; `a or b, the larger` takes the larger; `% of range 5 A` and `% of full scale 5 A` are
 * absolute; `% of reading` is `%`; `digits` and `counts` are steps of the display. `(k=2)`, `(95 %)`, `(standard)` as in quantities.
 */
export function parseAccuracy(text: string): Accuracy | ParseFailure {
  const { rest, coverage = 'rectangular', unread } = splitCoverage(text.trimEnd());
  if (unread !== undefined) return fail(`${unread} does not say what the limits mean`, rest.length + 1, COVERAGE_EXPECTED);
  const known = sensorClass(rest.trim().replace(/\s+/g, ' '));
  if (known) return { ...known, digits: 0, coverage, text: text.trim(), unit: 'K' };
  if (/^\s*(type|thermocouple|pt\s*\d)/i.test(rest)) return fail(`unknown tolerance class ${rest.trim()}`, 0, SENSOR_CLASSES);
  const larger = /^(.*?)\s+or\s+(.*?),?\s+(?:the|whichever is(?: the)?) (?:larger|greater)\s*$/i.exec(rest);
  const total = larger ? eitherOf(larger[1]!, larger[2]!, rest) : sumOf(rest, 0);
  if (isParseFailure(total)) return total;
  const { unit, ...limits } = total;
  return { ...limits, coverage, text: text.trim(), ...(unit !== undefined && { unit }), ...(larger && { larger: true }) };
}

/** Two single terms, one of them a share of the reading. */
function eitherOf(first: string, second: string, whole: string): Term | ParseFailure {
  const a = sumOf(first, 0);
  if (isParseFailure(a)) return a;
  const offset = whole.indexOf(second, first.length);
  const b = sumOf(second, offset);
  if (isParseFailure(b)) return b;
  const shares = [a, b].filter(({ ofReading }) => ofReading > 0).length;
  const mixed = [a, b].some((term) => term.ofReading > 0 && term.absolute + term.digits > 0);
  if (shares !== 1 || mixed)
    return fail(
      'the larger of two limits of one kind, or of sums',
      offset,
      'a limit and a share of the reading, such as ± 2 °C or 2 %, the larger',
    );
  return plus(a, b, offset);
}

function sumOf(text: string, start: number): Term | ParseFailure {
  const opening = /^\s*(?:±|\+\/?-)?\s*\(?/.exec(text)![0];
  const open = opening.length;
  const inner = opening.endsWith('(') ? text.replace(/\)\s*$/, '') : text;
  let total: Term = NOTHING;
  let offset = open;
  for (const piece of inner.slice(open).split('+')) {
    const term = termOf(piece, start + offset);
    if (isParseFailure(term)) return term;
    const sum = plus(total, term, start + offset);
    if (isParseFailure(sum)) return sum;
    total = sum;
    offset += piece.length + 1;
  }
  return total;
}

function plus(a: Term, b: Term, offset: number): Term | ParseFailure {
  if (a.unit !== undefined && b.unit !== undefined && a.unit !== b.unit) {
    return fail(`limits in ${a.unit} and in ${b.unit} do not add up`, offset, `a limit in ${a.unit}`);
  }
  const unit = a.unit ?? b.unit;
  return {
    ofReading: a.ofReading + b.ofReading,
    absolute: a.absolute + b.absolute,
    digits: a.digits + b.digits,
    ...(unit !== undefined && { unit }),
  };
}

function termOf(piece: string, start: number): Term | ParseFailure {
  const blank = piece.length - piece.trimStart().length;
  const number = numeralAt(piece, blank, EXPECTED);
  if (isParseFailure(number)) return { ...number, offset: start + number.offset };
  const said = piece.slice(number.end).trim();
  const place = start + number.end + piece.slice(number.end).length - piece.slice(number.end).trimStart().length;
  if (number.value <= 0) return fail(`the limit ${piece.trim()} is not above zero`, start + blank, 'a limit above zero');
  if (said === '') return fail(`${piece.trim()} has no unit`, place, EXPECTED);
  if (/^(?:digits?|counts?)$/i.test(said)) return { ...NOTHING, digits: number.value };
  if (/^%(?: of (?:the )?reading)?$/i.test(said)) return { ...NOTHING, ofReading: number.value / 100 };
  const range = /^% of (?:the )?(?:range|full scale)\s*(.*)$/i.exec(said);
  return range
    ? ofRange(number.value / 100, range[1]!, place + said.length - range[1]!.length)
    : absoluteTerm(number.value, said, place);
}

function ofRange(share: number, text: string, offset: number): Term | ParseFailure {
  const range = numeralAt(text, 0, 'the range, such as 1 % of range 5 A');
  if (isParseFailure(range)) return { ...range, offset: offset + range.offset };
  return absoluteTerm(share * range.value, text.slice(range.end).trim(), offset + range.end);
}

function absoluteTerm(value: number, spelling: string, offset: number): Term | ParseFailure {
  const unit = spelling === '' ? undefined : readUnit(spelling, 'difference');
  if (unit) return { ...NOTHING, absolute: toCanonical(value, unit), unit: unit.canonical };
  if (spelling === '') return fail('a range without a unit', offset, 'the range with its unit, such as 5 A');
  if (/\sor\s/i.test(spelling))
    return fail('two limits without a word on which of them counts', offset, 'the larger said, such as ± 2 °C or 2 %, the larger');
  const near = nearest(spelling, ['digits', 'counts']) ?? nearestUnit(spelling);
  return fail(`unknown unit ${spelling}`, offset, near === undefined ? EXPECTED : `did you mean ${near}?`);
}
