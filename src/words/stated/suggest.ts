/** A wording in the author's own form that a value would bear out. */
import { fromCanonical, readUnit, type Unit } from '../../quantities/units.ts';
import { asSaid } from './as-said.ts';
import { type Direction, directionOf, FINER_HEDGED, sayingsOf } from './candidates.ts';
import { holds, type Verdict, wantedSign } from './holds.ts';
import { inUnit } from './meaning.ts';
import type { Comparison, Phrase, SaidNumber } from './phrase.ts';
import { readStated } from './read.ts';
import { isUnread, type Stated } from './stated-number.ts';
import { type Saying, wordingOf } from './wording.ts';

/** Words of comparison and their opposites. */
const OPPOSITES: ReadonlyMap<string, string> = new Map(
  'rose fell,rises falls,rise fall,risen fallen,fell rose,falls rises,fall rise,fallen risen,climbed fell,climbs falls,climb fall,dropped rose,drops rises,drop rise,gained lost,gains loses,gain loss,lost gained,loses gains,loss gain,increase decrease,decrease increase,grew shrank,grows shrinks,warmed cooled,warms cools,cooled warmed,cools warms,up down,down up,warmer cooler,hotter cooler,cooler warmer,colder warmer,faster slower,slower faster,quicker slower,more less,less more,fewer more,higher lower,lower higher,longer shorter,shorter longer,greater smaller,bigger smaller,larger smaller,smaller larger,above below,below above,over under,under over'
    .split(',')
    .map((pair) => pair.split(' ') as [string, string]),
);

/** A value with what is known of it besides: what the page prints, and whether words are true of it for certain. */
export interface Known {
  /** As it is printed, canonical; the step of which that is a multiple; and with its unit. */
  readonly printed: { readonly value: number; readonly step: number; readonly text: string };
  readonly verdict: (said: Stated) => Verdict;
}

/**
 * The author's words with another number, in his form (digits or words, unit, precision and hedge), such that they hold for `value`.
 * `unit` is the value's canonical unit. Where the form cannot say it, more digits, then no hedge; undefined where the words are of
 * another unit or the value is not finite. The result reads back: `holds(readStated(result, unit), value, null)` is 'holds'.
 * With `known` it is true for certain where any wording is: the printed number is tried too, and its last digit.
 */
export function suggest(stated: Stated, value: number, unit: string, known?: Known): string | undefined {
  const fitting = inUnit(stated, unit);
  if (isUnread(fitting) || !Number.isFinite(value)) return undefined;
  const verdict = known?.verdict ?? ((said: Stated) => holds(said, value, null));
  let narrow: string | undefined;
  for (const worded of candidates(fitting, value, known)) {
    const wording = asSaid(worded);
    const read = wording === undefined ? undefined : readStated(wording, unit);
    if (!read || isUnread(read)) continue;
    const found = verdict(read);
    if (found === 'holds') return wording;
    if (found === 'holds narrowly') narrow ??= wording;
  }
  return narrow;
}

function* candidates(stated: Stated, value: number, known: Known | undefined): Generator<string> {
  yield* wordings(stated, value);
  if (known) {
    yield* wordings(stated, known.printed.value);
    yield* asPrinted(stated, known.printed);
  }
  // "Rose by −3 K" says it the wrong way round.
  const { text, start, end, comparison } = stated.said;
  if (comparison && comparison.kind !== 'apart' && (stated.sense !== undefined || (value < 0 && stated.unit !== '1'))) return;
  yield* plain(stated, value);
  if (known) yield replaced(text, [{ start, end, by: known.printed.text }]);
}

/** The number as it is printed, to its own last digit: in the author's form. */
function* asPrinted(stated: Stated, { value, step }: Known['printed']): Generator<string> {
  const bare: Stated = { ...stated, said: withoutHedge(stated.said) };
  const [side] = bare.said.sides;
  const place = Math.floor(Math.log10(step / unitOf(stated, side).factor) + ROUNDING);
  const { said, turned } = saidValue(bare, side, value);
  yield* worded(bare, side, side, [{ value: said, place }], turned);
}

const ROUNDING = 1e-9;

function* wordings(stated: Stated, value: number): Generator<string> {
  const { said, hedge } = stated;
  const [first, second] = said.sides;
  if (second && !said.plusMinus) yield* ranges(stated, value, [first, second]);
  const place = second ? said : first;
  yield* withSide(stated, value, first, { start: place.start, end: Math.max(place.end, second?.end ?? 0) }, directionOf(hedge));
  const bare: Stated = { ...stated, said: withoutHedge(said) };
  if (hedge !== undefined) yield* withSide(bare, value, bare.said.sides[0], bare.said.sides[0], 'near');
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** The words with the stretch replaced by the side's number as it could be, the comparison turned where the value changed sides. */
function* withSide(stated: Stated, value: number, side: SaidNumber, stretch: Stretch, direction: Direction): Generator<string> {
  const { said, turned } = saidValue(stated, side, value);
  const finer = stated.said.hedge && stated.said.hedge.name !== 'exactly' ? FINER_HEDGED : undefined;
  yield* worded(stated, side, stretch, sayingsOf(side, said, direction, finer), turned);
}

function* worded(
  { said }: Stated,
  side: SaidNumber,
  stretch: Stretch,
  sayings: readonly Saying[],
  turned: boolean,
): Generator<string> {
  const { text, comparison } = said;
  for (const saying of sayings) {
    const wording = wordingOf(side, text, saying);
    if (wording === undefined) continue;
    const flipped = turned && comparison ? turn(text, comparison) : undefined;
    // Words that have no opposite cannot say it: another number in them would be false.
    if (turned && comparison && !flipped) continue;
    yield replaced(text, [{ start: stretch.start, end: stretch.end, by: wording }, ...(flipped ? [flipped] : [])]);
  }
}

/** The range, one end moved to take the value in. */
function* ranges(stated: Stated, value: number, [first, second]: readonly [SaidNumber, SaidNumber]): Generator<string> {
  const down = value < stated.nominal;
  const side = down ? first : second;
  yield* withSide(stated, value, side, side, down ? 'down' : 'up');
}

/** The value in the side's own unit and words: a share of one for "30 percent faster", a size for "6 degrees cooler". */
function saidValue(stated: Stated, side: SaidNumber, value: number): { said: number; turned: boolean } {
  const { comparison } = stated.said;
  const share = side.unit?.kind === 'percent' || (!side.unit && side.amount.part !== undefined);
  const compares = comparison && comparison.kind !== 'apart' && (!share || comparison.ofRatio);
  const unit = unitOf(stated, side);
  if (share && compares) {
    const by = fromCanonical(value - 1, unit);
    const wanted = comparison.kind === 'less' ? -by : by;
    return { said: Math.abs(wanted), turned: wanted < 0 };
  }
  const said = fromCanonical(value, unit);
  const wanted = wantedSign(stated);
  if (wanted !== undefined) return { said: Math.abs(said), turned: said * wanted < 0 };
  if (stated.bySize) return { said: Math.abs(said), turned: false };
  return comparison?.kind === 'more' && compares ? { said: Math.abs(said), turned: said < 0 } : { said, turned: false };
}

function unitOf({ unit, difference }: Stated, side: SaidNumber): Unit {
  const own = difference ? readUnit(side.unit?.spelling ?? '', 'difference') : side.unit?.unit;
  return own ?? { canonical: unit, factor: 1, offset: 0, decimal: 0 };
}

interface Edit extends Stretch {
  readonly by: string;
}

function turn(text: string, { start, end }: Comparison): Edit | undefined {
  // Of "fell by" the verb is turned, though "by" is what compares.
  const verb = /^by\b/i.test(text.slice(start, end)) ? /\p{L}+(?=\s+$)/u.exec(text.slice(0, start)) : null;
  const word = verb?.[0] ?? /^\p{L}+/u.exec(text.slice(start, end))?.[0] ?? '';
  const at = verb?.index ?? start;
  const opposite = OPPOSITES.get(word.toLowerCase());
  return opposite === undefined ? undefined : { start: at, end: at + word.length, by: opposite };
}

function replaced(text: string, edits: readonly Edit[]): string {
  const later = [...edits].sort((a, b) => b.start - a.start);
  return later.reduce((all, { start, end, by }) => all.slice(0, start) + by + all.slice(end), text);
}

/** The phrase with the words of its hedge cut out of the text. */
function withoutHedge(phrase: Phrase): Phrase {
  const { text, hedge } = phrase;
  const [side] = phrase.sides;
  if (!hedge) return phrase;
  const before = hedge.start < side.start;
  const [from, to] = before ? [hedge.start, side.start] : [hedge.start, hedge.end];
  const cut = replaced(text, [{ start: from, end: to, by: '' }]);
  const read = readStated(cut);
  return isUnread(read) ? phrase : read.said;
}

/** Last resort: the number alone in digits, with its unit, in place of the whole phrase. */
function* plain(stated: Stated, value: number): Generator<string> {
  const { text, start, end } = stated.said;
  const spelling = stated.unit === '1' ? '' : ` ${stated.unit}`;
  const own = stated.said.sides.at(-1)?.unit ? spelling : '';
  const side: SaidNumber = { amount: { value, place: 0, style: 'digits', start: 0, end: 0 }, start: 0, end: 0 };
  for (const saying of sayingsOf(side, value, 'near')) {
    yield replaced(text, [{ start, end, by: `${wordingOf(side, '', saying)}${own}` }]);
  }
}
