/** A `:value` in the place of a number's digits: the words around them stay, the page prints what the data says. */
import { printedStep, printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { unitFor } from '../../quantities/units.ts';
import type { SaidNumber } from '../../words/stated/phrase.ts';
import { isUnread, readStated } from '../../words/stated/read.ts';

/**
 * The words with the directive in the place of number, unit and hedge; "6 degrees warmer" keeps its "warmer". It prints in the author's
 * unit, and no finer than he wrote. `quantity` is what `is` stands for. Undefined where the words cannot be read.
 */
export function valueForm(words: string, is: string, quantity: Quantity, unit?: string): string | undefined {
  const said = readStated(unit === undefined ? words : `${words} ${unit}`, quantity.unit);
  if (isUnread(said) || said.said.sides.length > 1) return undefined;
  const { hedge, comparison, sides } = said.said;
  const [side] = sides;
  const start = Math.min(side.start, hedge?.start ?? side.start);
  const end = Math.min(words.length, Math.max(side.end, hedge?.end ?? 0));
  const within = comparison && comparison.start >= start && comparison.end <= end;
  const after = `${within ? ` ${words.slice(comparison.start, comparison.end)}` : ''}${withoutOwnWord(words.slice(end), quantity)}`;
  const share = side.unit?.kind === 'percent' || (!side.unit && side.amount.part !== undefined);
  const expression = expressionOf(is, quantity, {
    ratio: share && comparison?.ofRatio === true ? comparison.kind : undefined,
    bySize: said.bySize,
  });
  const attributes = attributesOf(side, quantity, share);
  const times = side.unit?.kind === 'times' ? ' times' : '';
  return `${words.slice(0, start)}:value[${expression}]${attributes}${times}${after}`;
}

/** The value prints the unit of a score: "233.6 MB/s" keeps no "MB/s" behind it. */
function withoutOwnWord(after: string, quantity: Quantity): string {
  const { unit } = printQuantity(quantity);
  const [behind = ''] = /^[ \u00a0\u2009\u202f-]?\S+(?: \S+)*/.exec(after) ?? [];
  const word = behind.replace(/^[ \u00a0\u2009\u202f-]/, '');
  const own = unit !== '' && word.toLowerCase().startsWith(unit.toLowerCase()) && !/^[\p{L}\p{N}]/u.test(word.slice(unit.length));
  return own ? after.slice(behind.length - word.length + unit.length) : after;
}

interface Said {
  /** What a share is more or less than: "30 percent less" is one less a ratio. */
  readonly ratio: 'more' | 'less' | 'apart' | undefined;
  readonly bySize: boolean;
}

function expressionOf(is: string, { value }: Quantity, { ratio, bySize }: Said): string {
  if (ratio === 'less') return `1 - ${is}`;
  if (ratio !== undefined) return `${is} - 1`;
  if (!bySize || value >= 0) return is;
  const [left, right, ...more] = is.split(' - ');
  if (right !== undefined && more.length === 0 && !/ [+-] /.test(`${left}${right}`)) return `${right} - ${left}`;
  return / /.test(is) ? `-(${is})` : `-${is}`;
}

/** The author's unit where the printer's own is another, and his last digit where that is coarser than what is printed. */
function attributesOf({ unit, amount, mixed }: SaidNumber, quantity: Quantity, share: boolean): string {
  const spelling = share ? '%' : unit?.kind === 'times' ? undefined : unit?.spelling;
  const fits = spelling !== undefined && !isRefusal(unitFor(quantity.unit, spelling));
  const printed = printQuantity(quantity, fits ? { unit: spelling } : {});
  const step = Number(`1e${amount.place}`);
  const own = printedStep(quantity, fits ? spelling : undefined);
  const coarser = amount.part === undefined && !mixed && !amount.article && step > own.size;
  if (coarser) return `{to="${step}${printed.unit === '' ? '' : ` ${printed.unit}`}"}`;
  return fits && printed.unit !== printQuantity(quantity).unit ? `{unit=${quoted(spelling)}}` : '';
}

function quoted(unit: string): string {
  return /^[A-Za-z%]+$/.test(unit) ? unit : `"${unit}"`;
}
