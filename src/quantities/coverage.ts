/** What a stated `± a` means: limits, an expanded uncertainty, or a standard uncertainty. */
import { readUnit } from './units.ts';

/** How a stated half width becomes a standard uncertainty: ÷ √3, as it is, ÷ k. */
export type Coverage = 'rectangular' | 'standard' | { readonly k: number };

/** Coverage factors of a normal distribution by level of confidence in per cent: JCGM 100:2008, Table G.1. */
const LEVELS: ReadonlyMap<string, number> = new Map([
  ['68.27', 1],
  ['90', 1.645],
  ['95', 1.96],
  ['95.45', 2],
  ['99', 2.576],
  ['99.73', 3],
]);

export const COVERAGE_EXPECTED = '(k=2), (95 %) or (standard)';

/** Standard uncertainty of a stated half width. Limits are taken as rectangular: JCGM 100:2008, 4.3.7. */
export function standardOfHalfWidth(halfWidth: number, coverage: Coverage): number {
  if (coverage === 'rectangular') return halfWidth / Math.sqrt(3);
  return coverage === 'standard' ? halfWidth : halfWidth / coverage.k;
}

/** What a source with an uncertainty stated so says of its distribution: nothing where it is normal. */
export function distributionOf(coverage: Coverage): { readonly distribution?: 'rectangular' } {
  return coverage === 'rectangular' ? { distribution: 'rectangular' } : {};
}

/** Splits a trailing `(k=2)`, `(95 %)` or `(standard)` off a text. `unread` is what such brackets say when it is none of these; those of a unit, as in `dB(A)`, are left to it. */
export function splitCoverage(text: string): { readonly rest: string; readonly coverage?: Coverage; readonly unread?: string } {
  const found = /[ \u00a0]*\(\s*(k\s*=[^()]*|[^()]*%|[a-z]+)\s*\)\s*$/i.exec(text);
  if (!found || endsInUnit(text)) return { rest: text };
  const rest = text.slice(0, found.index);
  const coverage = coverageOf(found[1]!.replace(/\s+/g, ''));
  return coverage ? { rest, coverage } : { rest, unread: found[0].trim() };
}

/** Whether the brackets at the end belong to a unit. */
function endsInUnit(text: string): boolean {
  const unit = /[^\d\s±()]+\([a-z]+\)\s*$/i.exec(text);
  return unit !== null && readUnit(unit[0].trim()) !== undefined;
}

function coverageOf(text: string): Coverage | undefined {
  if (text === 'standard') return 'standard';
  const k = LEVELS.get(text.replace(/%$/, '')) ?? Number(/^k=(\d+(?:\.\d+)?)$/i.exec(text)?.[1] ?? Number.NaN);
  return k > 0 && (text.endsWith('%') || text.includes('=')) ? { k } : undefined;
}
