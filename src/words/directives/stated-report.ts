/** What an author reads of a stated number that the data does not bear, or only just. */
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { exact, interval95 } from '../../quantities/uncertainty.ts';
import { fromCanonical, toCanonical, unitFor } from '../../quantities/units.ts';
import type { Span } from '../expression/expression-tree.ts';
import type { TextProblem } from '../expression/text-problem.ts';
import type { RuleId } from '../rules/rules.ts';
import { holds, wantedSign } from '../stated/holds.ts';
import { isUnread, readStated, type Stated, type Unread } from '../stated/read.ts';

export interface StatedReport {
  readonly rule: RuleId;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

type Interval = readonly [number, number] | undefined;

/** The words say something else than the data. `said` is in the unit of `quantity`; `wording` is what would be true. */
export function reportStated(said: Stated, quantity: Quantity, interval: Interval, wording: string | undefined): StatedReport {
  return {
    rule: 'stated-differs',
    found: `stated "${said.said.text}", and the data says ${dataWords(said, quantity, interval)}`,
    expected: `what the words allow: ${allowedWords(said, quantity.unit)}`,
    remedy: wording === undefined ? 'change the words to what the data says' : `write "${wording}"`,
  };
}

/** The words are true of the value, and its uncertainty reaches beyond what they allow. */
export function reportNarrow(said: Stated, quantity: Quantity, interval: Interval): StatedReport {
  const wider = widened(said, quantity, interval);
  return {
    rule: 'stated-narrow',
    found: `stated "${said.said.text}", and the data says ${dataWords(said, quantity, interval)}: true, but not for certain`,
    expected: `a 95 % interval within what the words allow: ${allowedWords(said, quantity.unit)}`,
    remedy: wider === undefined ? 'say it less closely, or measure more closely' : `write "${wider}"`,
  };
}

/** The same words less closely: with "about" before the number, where the whole 95 % interval then fits. */
function widened(said: Stated, quantity: Quantity, interval: Interval): string | undefined {
  const { text, hedge, start } = said.said;
  const ends = interval ?? interval95(quantity);
  if (hedge || !ends) return undefined;
  const wording = `${text.slice(0, start)}about ${text.slice(start)}`;
  const read = readStated(wording, quantity.unit);
  return !isUnread(read) && holds(read, quantity.value, ends) === 'holds' ? wording : undefined;
}

/** Words that cannot be read as a number, or as one of this unit. `label` is where they stand. */
export function reportUnread(
  words: string,
  unread: Unread,
  quantity: Quantity,
  label: Span & { readonly text: string },
): TextProblem {
  const mismatch = !isUnread(readStated(words)) || unread.unread.startsWith('no number that fits');
  const shift = label.text.indexOf(words);
  const at = shift < 0 ? label : { start: Math.min(label.start + shift + unread.offset, label.end - 1), end: label.end };
  const where = mismatch ? `; the data says ${printQuantity(quantity).text}` : '';
  return {
    rule: mismatch ? 'unit-mismatch' : 'stated-unread',
    start: at.start,
    end: at.end,
    found: `stated "${words}": ${unread.unread}${where}`,
    expected: unread.expected,
    remedy: 'change the words, or hold them with `:claim` and a condition',
  };
}

/** The sentence says of two runs the opposite of what the expression gives. `other` is the alias that it compares with. */
export function turnedReport(words: string, other: string, expression: string): StatedReport {
  return {
    rule: 'stated-turned',
    found: `the sentence compares with ${other} and says "${words}", and \`${expression}\` gives the opposite`,
    expected: 'a sentence that compares the runs the way round that the data has them',
    remedy: 'change places of the two runs in the sentence, or turn its words of more and less',
  };
}

/** The interval of true values that the words allow, in the author's own unit: "57.5 °C to below 58.5 °C". `unit` is the canonical one. */
export function allowedWords(said: Stated, unit: string): string {
  const { lower, upper, lowerClosed, upperClosed } = said;
  const own = ownUnit(said, unit);
  const print = (end: number) => (Number.isFinite(end) ? printQuantity(exact(readable(end), unit), own).text : '');
  const [low, high] = [print(lower), print(upper)];
  const wanted = wantedSign(said);
  const size = wanted === -1 ? ', below zero' : wanted === undefined && said.bySize ? ', by size' : '';
  if (lower === Number.NEGATIVE_INFINITY) return `${upperClosed ? `${high} or less` : `less than ${high}`}${size}`;
  if (upper === Number.POSITIVE_INFINITY) return `${lowerClosed ? `${low} or more` : `more than ${low}`}${size}`;
  if (lower === upper) return `${low} and nothing beside it${size}`;
  return `${lowerClosed ? low : `above ${low}`} to ${upperClosed ? high : `below ${high}`}${size}`;
}

/** A third has no short decimal: six digits say enough of it. */
function readable(end: number): number {
  return end === Number(end.toPrecision(10)) ? end : Number(end.toPrecision(6));
}

/** The author's unit, as an option of the printer; none for shares of a ratio ("30 percent faster" is 1.3) and where it is the printer's own choice. */
function ownUnit({ said }: Stated, unit: string): { readonly unit?: string } {
  const spelling = said.sides.at(-1)?.unit?.spelling;
  if (spelling === undefined || (unit === '1' && said.comparison?.ofRatio)) return {};
  return isRefusal(unitFor(unit, spelling)) ? {} : { unit: spelling };
}

/** The value as it prints, in the author's unit too where that is another, with digits enough to tell it from what the words allow. */
function dataWords(said: Stated, quantity: Quantity, interval: Interval): string {
  const plain = printQuantity(quantity);
  const own = printQuantity(quantity, ownUnit(said, quantity.unit));
  const uncertainty = printUncertainty(quantity, { interval });
  const more = [own.text === plain.text ? '' : own.text, unrounded(said, quantity, own.unit)].filter((text) => text !== '');
  return withUncertainty(more.length > 0 ? `${plain.text} (${more.join('; ')})` : plain.text, uncertainty);
}

/** A printed value with what is known of its uncertainty: "71.3 °C ± 2.0 K (95 %)", "42 min, 40 min to 43 min (95 %)". */
export function withUncertainty(value: string, uncertainty: string): string {
  if (uncertainty === '') return value;
  return uncertainty.startsWith('±') ? `${value} ${uncertainty}` : `${value}, ${uncertainty}`;
}

/** More digits, where the printed ones would seem to be what the words allow though the value is not; '' elsewhere. */
export function unrounded(said: Stated, quantity: Quantity, spelling: string): string {
  const unit = unitFor(quantity.unit, spelling === '' ? '1' : spelling);
  const verdict = holds(said, quantity.value, null);
  if (isRefusal(unit) || verdict !== 'fails') return '';
  const shown = Number(
    printQuantity(quantity, { unit: spelling })
      .number.replace('−', '-')
      .replace(/[^\d.e-]/g, ''),
  );
  const value = fromCanonical(quantity.value, unit);
  const seems = (number: number) => holds(said, toCanonical(number, unit), null) !== 'fails';
  if (!seems(shown)) return '';
  for (let digits = 3; digits < 15; digits += 1) {
    const finer = Number(value.toPrecision(digits));
    if (!seems(finer)) return `${String(finer).replace('-', '−')}${spelling === '' ? '' : `\u00a0${spelling}`} unrounded`;
  }
  return '';
}

/** On what a stated number rests, in words. */
export function restsOn(data: string, allowed: string): string {
  return `the data says ${data}; the words allow ${allowed}`;
}

/** What the data says, of the words of `restsOn`. */
export function dataOf(rests: string): string {
  return /^the data says (.*); the words allow /s.exec(rests)?.[1] ?? rests;
}
