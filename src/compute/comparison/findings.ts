/** What a comparison found, in sentences: each setting against the reference, from the figures of the comparison alone. */
import { definitionOf, type FigureName } from '../../figures/catalogue.ts';
import type { Setting } from '../../figures/comparison/compared.ts';
import { DIFFERS, NOT_TOLD_APART, RUNS_DO_NOT_DIFFER } from '../../figures/comparison/verdict-words.ts';
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { printWithUncertainty } from '../../quantities/print-with-uncertainty.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { fragmentOf } from '../../words/page/fragment.ts';
import type { Finding } from '../results.ts';
import type { ReadComparison } from './compared-tables.ts';

interface Phrase {
  /** What follows the amount where the value is above that of equal settings, and where it is below. */
  readonly more: string;
  readonly less: string;
}

/** How a difference is said. The order is the one in which sentences have them. */
const PHRASES: Partial<Record<FigureName, Phrase>> = {
  speedup: { more: 'faster', less: 'slower' },
  power_delta: { more: 'more power', less: 'less power' },
  rise_delta: { more: 'more rise over the room', less: 'less rise over the room' },
  clock_delta: { more: 'more clock', less: 'less clock' },
  performance_per_watt: { more: 'more work for each watt', less: 'less work for each watt' },
};

const OPEN: readonly unknown[] = [NOT_TOLD_APART, RUNS_DO_NOT_DIFFER];

/** A finding for each setting but the reference, in the author's order; none of which nothing was asked. `settings`: in words, by alias. */
export function findingsOf({ figures, reference, runs }: ReadComparison, settings: ReadonlyMap<string, string>): Finding[] {
  return runs
    .filter((setting) => setting !== reference)
    .flatMap((setting) => findingOf(figures, reference, setting, settings.get(setting.alias) ?? ''));
}

function findingOf(figures: ReadComparison['figures'], reference: Setting, setting: Setting, words: string): Finding[] {
  const asked = (Object.keys(PHRASES) as FigureName[]).flatMap((name) => {
    const entry = [...figures].find((each) => each[1].name === name && isOverall(each[1], setting.alias));
    return entry && isPresent(entry[1]) ? [{ address: entry[0], figure: entry[1] }] : [];
  });
  const differs = asked.filter(({ figure }) => DIFFERS.includes(figure.of?.verdict));
  const open = asked.filter(({ figure }) => OPEN.includes(figure.of?.verdict));
  if (differs.length + open.length === 0) return [];
  const once = [...differs, ...open].every(({ figure }) => figure.of?.between_runs === 'unknown');
  return [
    {
      opening: `${setting.alias}${words === '' ? '' : ` (${words})`} against ${reference.alias}${once ? ', in these runs' : ''}: `,
      differs: differs.map(({ address, figure }) => ({ ...said(figure), anchor: fragmentOf(address) })),
      open: open.map(({ figure }) => definitionOf(figure.name)!.label),
    },
  ];
}

/** Of a setting, over all tests and places. */
function isOverall({ of }: Figure, alias: string): boolean {
  return of?.run === alias && of.test === undefined && of.figure === undefined;
}

/** The size of what lies between the two: of a ratio, how far it is from 1, in per cent. */
function said({ name, quantity, interval }: PresentFigure): { readonly amount: string; readonly of: string } {
  const ratio = quantity.unit === '1';
  const off = (value: number) => (ratio ? value - 1 : value);
  const above = off(quantity.value) >= 0;
  const { repeatabilityOnly: _saidBelow, ...rest } = quantity;
  const size: Quantity = { ...rest, value: Math.abs(off(quantity.value)) };
  const ends = interval?.map((end) => (above ? off(end) : -off(end))).sort((a, b) => a - b) as [number, number] | undefined;
  const amount = printWithUncertainty(size, { interval: ends, ...(ratio ? { unit: '%' } : {}) });
  const phrase = PHRASES[name as FigureName]!;
  return { amount, of: above ? phrase.more : phrase.less };
}
