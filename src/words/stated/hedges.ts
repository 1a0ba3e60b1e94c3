/** What hedges mean: the words that set the interval around a number, as data for the reader and for the page that defines them. */
import type { Precision } from './precision.ts';
import { clean, type Ends } from './stated-number.ts';

export interface Hedge {
  readonly name: string;
  /** Words before the number that are read as this hedge; signs too. */
  readonly before: readonly string[];
  /** Words after the number. */
  readonly after: readonly string[];
  /** What it means, a sentence for readers. */
  readonly meaning: string;
  /** A wording that `readStated` reads; the page prints the interval that it reads. */
  readonly example: string;
  /** True values allowed, in the unit that was said. Of a range both numbers are given. */
  readonly interval: (said: Precision, to?: Precision) => Ends;
}

const DEGREES_OF =
  'a little,a bit,a touch,a shade,a hair,a tad,a whisker,a fraction,slightly,marginally,just,only just,barely'.split(',');
const MORE_THAN = ['more', 'greater', 'higher', 'hotter', 'warmer', 'longer', 'larger', 'bigger'].map((word) => `${word} than`);
const LESS_THAN = ['less', 'fewer', 'lower', 'cooler', 'colder', 'shorter', 'smaller'].map((word) => `${word} than`);
const OVER = ['over', 'above', ...MORE_THAN];
const UNDER = ['under', 'below', ...LESS_THAN];

const DENIED = ['did not', "didn't", 'does not', "doesn't"];
const ROSE = 'go,goes,went,get,gets,got,rise,rises,rose,climb,climbs,climbed,come,comes,came,run,runs,ran'.split(',');
const FELL = 'go,goes,went,get,gets,got,drop,drops,dropped,fall,falls,fell,dip,dips,dipped,sink,sinks,sank'.split(',');

function each(words: readonly string[], others: readonly string[]): string[] {
  return words.flatMap((word) => others.map((other) => `${word} ${other}`));
}

function ends(lower: number, upper: number, lowerClosed: boolean, upperClosed: boolean): Ends {
  return { lower: clean(lower), upper: clean(upper), lowerClosed, upperClosed };
}

const from = (lower: number, closed: boolean) => ends(lower, Number.POSITIVE_INFINITY, closed, false);
const upTo = (upper: number, closed: boolean) => ends(Number.NEGATIVE_INFINITY, upper, false, closed);

/** The number without a hedge: what rounds to it, halves away from zero, so that 58 reaches from 57.5 up to but not including 58.5. */
export function bare({ nominal, half }: Precision): Ends {
  return ends(nominal - half, nominal + half, nominal > 0, nominal < 0);
}

export const HEDGES: readonly Hedge[] = [
  {
    name: 'about',
    before: [
      'about',
      'around',
      'roughly',
      'approximately',
      'approx',
      'circa',
      'ca',
      'some',
      'close to',
      'close on',
      'near',
      'in the region of',
      '~',
      '≈',
      'more or less',
    ],
    after: ['or so', 'or thereabouts', 'more or less', 'give or take', 'ish'],
    meaning:
      'Twice as far either way as the bare number reaches, but within a fifth of it; a round number (a multiple of 5, 50, 500 …) within half of that step, at most a twentieth of it, where that is more.',
    example: 'about 60 degrees',
    interval: (said, to = said) => ends(said.nominal - said.about, to.nominal + to.about, true, true),
  },
  {
    name: 'nearly',
    before: ['nearly', 'almost', 'not quite', 'approaching', 'getting on for'],
    after: [],
    meaning:
      'Short of the number, by no more than the bare number reaches; of a round number by half its step, at most a twentieth of it.',
    example: 'nearly 60 degrees',
    interval: ({ nominal, near }) =>
      nominal < 0 ? ends(nominal, nominal + near, false, true) : ends(nominal - near, nominal, true, false),
  },
  {
    name: 'just under',
    before: [...each(DEGREES_OF, UNDER), ...each(['just', 'a little', 'a bit'], ['short of', 'shy of'])],
    after: [],
    meaning: 'Below the number, by no more than nearly allows.',
    example: 'just under 60 degrees',
    interval: ({ nominal, near }) => ends(nominal - near, nominal, true, false),
  },
  {
    name: 'just over',
    before: each(DEGREES_OF, OVER),
    after: ['and a bit', 'and change'],
    meaning: 'Above the number, by as much as nearly allows below it.',
    example: 'just over 60 degrees',
    interval: ({ nominal, near }) => ends(nominal, nominal + near, false, true),
  },
  {
    name: 'under',
    before: [...UNDER, '<', 'short of', 'shy of', ...each(['never'], ['reached', 'reaches', 'hit', 'hits', 'touched', 'touches'])],
    after: [],
    meaning: 'Anything below the number, which itself is not.',
    example: 'under 60 degrees',
    interval: ({ nominal }) => upTo(nominal, false),
  },
  {
    name: 'over',
    before: [...OVER, '>', 'beyond', 'past', 'exceeding', 'exceeds', 'exceeded', 'upwards of', 'in excess of'],
    after: ['and then some'],
    meaning: 'Anything above the number, which itself is not.',
    example: 'over 60 degrees',
    interval: ({ nominal }) => from(nominal, false),
  },
  {
    name: 'at least',
    before: [
      'at least',
      'at the least',
      '≥',
      '>=',
      ...each(['no', 'not'], LESS_THAN),
      'not under',
      'not below',
      'a good',
      'a full',
      'a solid',
      'a clear',
    ],
    after: ['plus', '+', 'or more', 'or over', 'or above', 'or longer', 'or higher', 'at least', 'at the least'],
    meaning: 'The number or anything above it.',
    example: 'at least 60 degrees',
    interval: ({ nominal }) => from(nominal, true),
  },
  {
    name: 'at most',
    before: ['at most', 'at the most', '≤', '<=', ...each(['no', 'not'], MORE_THAN), 'not over', 'not above'],
    after: ['max', 'tops', 'or less', 'or under', 'or below', 'or fewer', 'or lower', 'at most', 'at the most'],
    meaning: 'The number or anything below it.',
    example: 'at most 60 degrees',
    interval: ({ nominal }) => upTo(nominal, true),
  },
  {
    name: 'up to',
    before: ['up to'],
    after: [],
    meaning: 'The number or anything below it, as at most; it does not say that the number is reached.',
    example: 'up to 60 degrees',
    interval: ({ nominal }) => upTo(nominal, true),
  },
  {
    name: 'as far as',
    before: ['low', 'little', 'few', 'high', 'much', 'many', 'long'].map((word) => `as ${word} as`),
    after: [],
    meaning: 'What the bare number means: say it of an extreme that was reached.',
    example: 'as low as 60 degrees',
    interval: (said) => bare(said),
  },
  {
    name: 'never above',
    before: [
      ...each(['never'], OVER),
      ...each(each(['never', ...DENIED], ROSE), [...OVER, 'past', 'beyond']),
      ...each(each(['never'], ['set', 'clocked']), OVER),
      ...each(['never', ...DENIED], ['exceed', 'exceeds', 'exceeded']),
      'not exceeding',
    ],
    after: [],
    meaning: 'The number or anything below it: say it of a highest value.',
    example: 'never above 60 degrees',
    interval: ({ nominal }) => upTo(nominal, true),
  },
  {
    name: 'never below',
    before: [...each(['never'], UNDER), ...each(each(['never', ...DENIED], FELL), UNDER)],
    after: [],
    meaning: 'The number or anything above it: say it of a lowest value.',
    example: 'never below 60 degrees',
    interval: ({ nominal }) => from(nominal, true),
  },
  {
    name: 'within',
    before: ['within', 'to within', '±', '+/-', 'plus or minus'],
    after: [],
    meaning: 'A difference of the number or less, either way.',
    example: 'within 2 degrees',
    interval: ({ nominal }) => ends(-Math.abs(nominal), Math.abs(nominal), true, true),
  },
  {
    name: 'between',
    before: ['between', 'from', 'anywhere between', 'anywhere from', 'somewhere between'],
    after: [],
    meaning: 'From the first number to the second, both included: 69 to 72 as between 69 and 72.',
    example: 'between 69 and 72 degrees',
    interval: ({ nominal }, to) => ends(nominal, to?.nominal ?? nominal, true, true),
  },
  {
    name: 'exactly',
    before: ['exactly', 'precisely', '='],
    after: ['exactly', 'sharp'],
    meaning: 'The number itself and nothing beside it: for settings and counts, not for what was measured.',
    example: 'exactly 2.6 GHz',
    interval: ({ nominal }) => ends(nominal, nominal, true, true),
  },
];

/** The hedge of a name. Throws an Error for a name that is not in the table. */
export function hedgeNamed(name: string): Hedge {
  const found = HEDGES.find((hedge) => hedge.name === name);
  if (!found) throw new Error(`no hedge is named ${name}`);
  return found;
}
