/**
 * What a canonical unit measures: exponents of base units and of the authors' own words. The electrical base is V and A instead of kg,
 * so that W and J are short. Every dimension has exactly one canonical name, so equal units are equal texts.
 */
import { compareText } from '../problem.ts';

/** Exponent by base unit (V, A, K, s, m, mol, cd) or word; no zeros. */
export type Dimension = ReadonlyMap<string, number>;

/** Coherent units with a name of their own (BIPM, SI Brochure 9th ed., Table 4), as exponents of V, A, s, m. */
const NAMED: ReadonlyMap<string, Dimension> = new Map(
  Object.entries({
    W: { V: 1, A: 1 },
    J: { V: 1, A: 1, s: 1 },
    Hz: { s: -1 },
    N: { V: 1, A: 1, s: 1, m: -1 },
    Pa: { V: 1, A: 1, s: 1, m: -3 },
    kg: { V: 1, A: 1, s: 3, m: -2 },
    F: { A: 1, s: 1, V: -1 },
    H: { V: 1, s: 1, A: -1 },
    'Hz/W': { s: -1, V: -1, A: -1 },
  }).map(([name, exponents]) => [name, new Map(Object.entries(exponents))]),
);
/** Base and helping units in the order in which they are written; words stand before them. */
const ORDER = ['J', 'W', 'V', 'A', 'm', 'K', 'mol', 'cd', 's'];
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** One unit of its own, or a word. */
export function single(name: string): Dimension {
  return NAMED.get(name) ?? new Map([[name, 1]]);
}

/** a × b^power. */
export function times(a: Dimension, b: Dimension, power = 1): Dimension {
  const product = new Map(a);
  for (const [name, exponent] of b) {
    const sum = (product.get(name) ?? 0) + exponent * power;
    if (sum === 0) product.delete(name);
    else product.set(name, sum);
  }
  return product;
}

const known = new Map<string, Dimension>();

/** Reads a canonical unit as `nameOf` writes it: `K/W`, `W/(m²·K)`, `points/J`, `1`. What is no known unit is a word. °C reads as K. */
export function dimensionOf(canonical: string): Dimension {
  const before = known.get(canonical);
  if (before) return before;
  const [over = '', ...under] = canonical.split('/');
  let dimension = productOf(over);
  for (const divisor of under) dimension = times(dimension, productOf(divisor.replace(/^\(|\)$/g, '')), -1);
  known.set(canonical, dimension);
  return dimension;
}

function productOf(text: string): Dimension {
  let product: Dimension = new Map();
  for (const factor of text.split('·')) {
    const [, name = '', power = ''] = /^(.*?)([⁰¹²³⁴⁵⁶⁷⁸⁹]*)$/u.exec(factor) ?? [];
    if (name === '1') continue;
    const exponent = power === '' ? 1 : Number([...power].map((digit) => SUPERSCRIPTS.indexOf(digit)).join(''));
    product = times(product, single(name === '°C' ? 'K' : name), exponent);
  }
  return product;
}

/** The canonical name of a dimension. */
export function nameOf(dimension: Dimension): string {
  if (dimension.size === 0) return '1';
  for (const [name, named] of NAMED) {
    if (sameDimension(dimension, named)) return name;
  }
  const powers = shortest(dimension);
  const over = written(powers, 1);
  const under = written(powers, -1);
  if (under.length === 0) return over.join('·');
  return `${over.join('·') || '1'}/${under.length > 1 ? `(${under.join('·')})` : under[0]}`;
}

/** Whether two dimensions are equal. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.size === b.size && [...a].every(([name, exponent]) => b.get(name) === exponent);
}

/** Takes out W and J where that leaves the fewest factors to write. */
function shortest(dimension: Dimension): Dimension {
  let best = dimension;
  let bestCost = cost(dimension);
  for (const watts of [1, -1, 2, -2, 0]) {
    for (const joules of [0, 1, -1, 2, -2]) {
      const rest = times(times(dimension, single('W'), -watts), single('J'), -joules);
      const powers = new Map([...rest, ['W', watts], ['J', joules]].filter(([, power]) => power !== 0) as [string, number][]);
      if (cost(powers) < bestCost) {
        best = powers;
        bestCost = cost(powers);
      }
    }
  }
  return best;
}

function cost(powers: Dimension): number {
  return [...powers.values()].reduce((sum, power) => sum + Math.abs(power), 0);
}

function written(powers: Dimension, sign: 1 | -1): string[] {
  return [...powers]
    .filter(([, power]) => Math.sign(power) === sign)
    .sort(([a], [b]) => ORDER.indexOf(a) - ORDER.indexOf(b) || compareText(a, b))
    .map(([name, power]) => name + (Math.abs(power) === 1 ? '' : superscript(Math.abs(power))));
}

function superscript(power: number): string {
  return [...String(power)].map((digit) => SUPERSCRIPTS[Number(digit)]).join('');
}
