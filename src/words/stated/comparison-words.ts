/** Words beside a number that make it a difference: "6 degrees warmer", "a rise of 6 degrees", "30 percent less". */
import type { Comparison, SaidNumber } from './phrase.ts';
import { type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';

export interface ComparisonFound {
  readonly comparison: Comparison;
  /** Index after the last token, where the words stand after the number. */
  readonly next: number;
}

const set = (words: string) => new Set(words.split(' '));

const MORE = set('more faster higher longer greater bigger larger quicker warmer hotter');
const LESS = set('less slower lower shorter smaller fewer cooler colder');
/** Of temperatures alone: a share of one has no meaning. */
const OF_TEMPERATURE = set('warmer hotter cooler colder');
const APART = set('apart headroom margin difference');
/** "Over the ambient" compares; "over the hour" does not. */
const PLACES = set('ambient room air surroundings limit idle threshold rating rated throttle');
const NOUNS_MORE = set('rise increase gain climb');
const NOUNS_LESS = set('drop fall decrease loss reduction');
const NOUNS_APART = set('difference gap spread headroom margin delta step change');
const VERBS_MORE = set('rose rises risen climbed climbs gained gains warmed warms grew grows up');
const VERBS_LESS = set('fell falls fallen dropped drops lost loses cooled cools shed sheds down');

const MOVES = set(
  'go goes going went gone move moves moved step steps stepped take takes took raised lowered rising falling climbing dropping',
);

/** Words after which "from … to …" are two numbers, a beginning and an end, and no range. */
export function changes(token: Token | undefined): boolean {
  const word = token?.low ?? '';
  return VERBS_MORE.has(word) || VERBS_LESS.has(word) || MOVES.has(word) || NOUNS_MORE.has(word) || NOUNS_LESS.has(word);
}

/** Which way a verb or a word of comparison goes: "rose", "hotter" more, "cools", "slower" less. */
export function wayOf(word: string): 'more' | 'less' | undefined {
  if (VERBS_MORE.has(word) || MORE.has(word)) return 'more';
  return VERBS_LESS.has(word) || LESS.has(word) ? 'less' : undefined;
}

/** Words after the number. */
export function comparisonAfter(tokens: readonly Token[], at: number): ComparisonFound | undefined {
  const word = tokens[at]?.low ?? '';
  if (word === 'again' && tokens[at + 1]?.low === 'as') return found(tokens, 'more', at, at + 1, true);
  const again = word === 'as' ? tokens.slice(at + 2, at + 4).findIndex(({ low }) => low === 'again') : -1;
  if (again >= 0) return found(tokens, 'more', at, at + 3 + again, true);
  const kind = MORE.has(word) ? 'more' : LESS.has(word) ? 'less' : APART.has(word) ? 'apart' : undefined;
  if (kind && !(kind !== 'apart' && tokens[at + 1]?.low === 'than' && startsNumber(tokens[at + 2])))
    return found(tokens, kind, at, at + 1, true);
  const noun = NOUNS_MORE.has(word) ? 'more' : NOUNS_LESS.has(word) ? 'less' : NOUNS_APART.has(word) ? 'apart' : undefined;
  if (noun) return found(tokens, noun, at, at + 1);
  const ofNoun = word === 'of' && NOUNS_APART.has(tokens[at + 1]?.low ?? '');
  if (ofNoun) return found(tokens, 'apart', at, at + 2);
  if (['above', 'over', 'below', 'under', 'short'].includes(word) && comparesWithPlace(tokens, at)) {
    return found(tokens, word === 'above' || word === 'over' ? 'more' : word === 'short' ? 'apart' : 'less', at, at + 1);
  }
  return undefined;
}

/** Above and below a place named within the next words; "short of" always compares. */
function comparesWithPlace(tokens: readonly Token[], at: number): boolean {
  if (tokens[at]?.low === 'short') return tokens[at + 1]?.low === 'of';
  if (tokens[at]?.low === 'above' && tokens[at + 1] === undefined) return true;
  return tokens.slice(at + 1, at + 4).some(({ low }) => PLACES.has(low));
}

function startsNumber(token: Token | undefined): boolean {
  return token?.kind === 'number';
}

/** Words before the number and its hedge: "by", "a rise of", "rose". */
export function comparisonBefore(tokens: readonly Token[], at: number): ComparisonFound | undefined {
  const word = tokens[at - 1]?.low ?? '';
  const by = word === 'by' ? (tokens[at - 2]?.low ?? '') : word;
  const kind = word !== 'by' ? undefined : MORE.has(by) ? 'more' : LESS.has(by) ? 'less' : undefined;
  if (kind) return found(tokens, kind, at - 2, at - 1, true);
  if (word === 'of' && NOUNS_MORE.has(tokens[at - 2]?.low ?? '')) return found(tokens, 'more', at - 2, at);
  if (word === 'of' && NOUNS_LESS.has(tokens[at - 2]?.low ?? '')) return found(tokens, 'less', at - 2, at);
  if (word === 'of' && NOUNS_APART.has(tokens[at - 2]?.low ?? '')) return found(tokens, 'apart', at - 2, at);
  if (VERBS_MORE.has(by)) return found(tokens, 'more', at - 1, at);
  if (VERBS_LESS.has(by)) return found(tokens, 'less', at - 1, at);
  return word === 'by' ? found(tokens, 'apart', at - 1, at) : undefined;
}

function found(tokens: readonly Token[], kind: Comparison['kind'], at: number, next: number, ofRatio = false): ComparisonFound {
  return { comparison: { kind, ofRatio, start: tokens[at]!.start, end: tokens[next - 1]!.end }, next };
}

/** What a comparison cannot be said of: times (three or four times as much?), and a share of a temperature. */
export function comparisonRefused(tokens: readonly Token[], at: number, { unit, amount }: SaidNumber): Unread | undefined {
  const token = tokens[at];
  if (!token || !(MORE.has(token.low) || LESS.has(token.low))) return undefined;
  if (unit?.kind === 'times') {
    return unread(
      `"times ${token.text}", which some read as one more`,
      token.start,
      'times as fast, times as much, or a percentage',
    );
  }
  const share = unit?.kind === 'percent' || (!unit && amount.part !== undefined);
  if (!share || !OF_TEMPERATURE.has(token.low)) return undefined;
  return unread(`a share of a temperature: "${token.text}"`, token.start, 'a difference in degrees');
}
