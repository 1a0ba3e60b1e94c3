/** The interval of true values that a phrase allows, in canonical units. */
import { isRefusal } from '../../quantities/refusal.ts';
import { readUnit, toCanonical, type Unit, unitFor } from '../../quantities/units.ts';
import { bare, hedgeNamed } from './hedges.ts';
import { beginsWithUnit } from './own-word.ts';
import type { Phrase, SaidNumber } from './phrase.ts';
import { precisionOf } from './precision.ts';
import { clean, type Ends, isUnread, type Stated, type Unread, unread } from './stated-number.ts';

/** A number said, as a canonical value: increasing, or falling for "30 percent less". */
interface Scale {
  readonly unit: string;
  readonly falls: boolean;
  readonly canonical: (said: number) => number;
}

/** Reads the phrase's meaning. `difference` takes degrees as a difference though no word says so; a figure in K asks for it. */
export function meaningOf(phrase: Phrase, difference = false): Stated | Unread {
  const last = phrase.sides.at(-1) as SaidNumber;
  const scales = phrase.sides.map((side) => scaleOf(side, phrase, difference));
  const scale = scales.at(-1) as Scale;
  const other = phrase.plusMinus && scale.unit === 'K' ? undefined : scales.find(({ unit }) => unit !== scale.unit);
  if (other) return unread(`a range from ${other.unit} to ${scale.unit}`, last.start, `both numbers in ${other.unit}`);
  const ends = endsOf(phrase, scales);
  if (isUnread(ends)) return ends;
  const { hedge, start, end, comparison } = phrase;
  const temperature = last.unit?.kind === 'temperature' || last.unit?.kind === 'kelvin';
  return {
    ...ends,
    unit: (scales[0] as Scale).unit,
    difference: temperature && scales[0]?.unit === 'K',
    nominal: nominalOf(phrase, scales),
    ...(hedge && { hedge: hedge.name }),
    bySize: comparison?.kind === 'less' && !isShare(last),
    start,
    end,
    said: phrase,
  };
}

function endsOf(phrase: Phrase, scales: readonly Scale[]): Ends | Unread {
  const [first, second] = phrase.sides;
  const scale = scales[0] as Scale;
  if (!second) {
    const said = precisionOf(first);
    return mapped(phrase.hedge ? hedgeNamed(phrase.hedge.name).interval(said) : bare(said), [scale, scale]);
  }
  if (phrase.plusMinus) return plusMinusOf(first, second, scale, scales[1] as Scale);
  const rule = hedgeNamed(phrase.hedge?.name ?? 'between');
  const ends = mapped(rule.interval(precisionOf(first), precisionOf(second)), [scale, scales[1] as Scale]);
  return ends.lower <= ends.upper ? ends : unread('a range that runs downwards', first.start, 'the smaller number first');
}

/** The number and its limits, both included. */
function plusMinusOf(first: SaidNumber, second: SaidNumber, scale: Scale, other: Scale): Ends {
  const step = Math.abs(other.canonical(second.amount.value) - other.canonical(0));
  const middle = scale.canonical(first.amount.value);
  return { lower: clean(middle - step), upper: clean(middle + step), lowerClosed: true, upperClosed: true };
}

function mapped({ lower, upper, lowerClosed, upperClosed }: Ends, [from, to]: readonly [Scale, Scale]): Ends {
  const [low, high] = [clean(from.canonical(lower)), clean(to.canonical(upper))];
  if (from.falls) return { lower: high, upper: low, lowerClosed: upperClosed, upperClosed: lowerClosed };
  return { lower: low, upper: high, lowerClosed, upperClosed };
}

function nominalOf({ sides: [first, second], plusMinus }: Phrase, scales: readonly Scale[]): number {
  const from = scales[0]!.canonical(first.amount.value);
  return clean(!second || plusMinus ? from : (from + scales[1]!.canonical(second.amount.value)) / 2);
}

function scaleOf(side: SaidNumber, { comparison, hedge }: Phrase, difference: boolean): Scale {
  const kind = side.unit?.kind;
  if (isShare(side) && comparison?.ofRatio) {
    const share = side.unit?.unit ?? ONE;
    const sign = comparison.kind === 'more' ? 1 : -1;
    return { unit: '1', falls: sign < 0, canonical: (said) => 1 + sign * toCanonical(said, share) };
  }
  const isDifference = kind === 'temperature' && (difference || comparison !== undefined || hedge?.name === 'within');
  const unit = isDifference ? (readUnit(side.unit!.spelling, 'difference') ?? ONE) : (side.unit?.unit ?? ONE);
  return { unit: unit.canonical, falls: false, canonical: (said) => toCanonical(said, unit) };
}

const ONE: Unit = { canonical: '1', factor: 1, offset: 0, decimal: 0 };

/** Percent and bare fractions can say by how much a ratio differs from one: "30 percent faster", "a third less". */
export function isShare({ unit, amount }: SaidNumber): boolean {
  return unit?.kind === 'percent' || (!unit && amount.part !== undefined);
}

/**
 * The phrase's meaning in a figure's canonical unit: degrees are a difference where that is K, a number without a unit may have the
 * author's own word after it ("1,250 points"). Unread where the words cannot be a value of that unit.
 */
export function inUnit(stated: Stated, canonical: string): Stated | Unread {
  if (stated.unit === canonical) return stated;
  const last = stated.said.sides.at(-1) as SaidNumber;
  if (canonical === 'K' && last.unit?.kind === 'temperature') return meaningOf(stated.said, true) as Stated;
  if (stated.unit === '1' && !last.unit) {
    if (isOwnWord(stated, canonical)) return { ...stated, unit: canonical };
    return unread('a number without a unit', stated.start, `a number with a unit for ${canonical}`);
  }
  return unread(
    `${describe(stated.unit)} where the data has ${describe(canonical)}`,
    stated.start,
    `a number in ${canonical === '1' ? 'times, percent or none' : canonical}`,
  );
}

/** A score's unit is its author's word and stands right after the number. */
function isOwnWord({ said }: Stated, canonical: string): boolean {
  const known = unitFor(canonical, canonical);
  if (isRefusal(known) || readUnit(canonical)) return false;
  return beginsWithUnit(said.text.slice(said.sides.at(-1)!.end), canonical);
}

function describe(unit: string): string {
  return unit === '1' ? 'a ratio' : `a value in ${unit}`;
}
