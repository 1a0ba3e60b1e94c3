/** What a plot of power by phase says in words and as tables. */
import { isPresent } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { intervalOf } from '../data/plotted-comparison.ts';
import { csv } from '../drawing/csv.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { PowerBar, PowerByPhase, PowerGroup } from './plan.ts';

/** "Mean power by phase at the board input: fast and rated". */
export function powerTitle({ at, groups }: PowerByPhase): string {
  const [{ bars, phase }, ...more] = groups as [PowerGroup, ...PowerGroup[]];
  const what = more.length > 0 ? 'Mean power by phase' : `Mean power (${phase})`;
  const known = bars.some((bar) => bar.at !== null);
  const runs = bars.flatMap((bar) =>
    bar.alias === '' ? [] : [known && at === null ? `${bar.alias} (${placeOf(bar)})` : bar.alias],
  );
  const where = at === null ? (known ? '' : ', place unstated') : ` at the ${at}`;
  return `${what}${where}${runs.length > 0 ? `: ${listed(runs)}` : ''}`;
}

/** Where the power of a bar is measured, in words. */
function placeOf({ at }: PowerBar): string {
  return at === null ? 'place unstated' : `at the ${at}`;
}

export function powerAlt({ groups }: PowerByPhase): string {
  const told = groups.map(({ phase, bars }) => `${phase}: ${listed(bars.map((bar) => `${bar.alias} ${meanOf(bar)}`.trim()))}`);
  return `Bars from zero, one for each run in each phase. ${told.join('. ')}.`;
}

/** "6.52 W", or "absent". */
export function meanOf({ figure }: PowerBar): string {
  return isPresent(figure) ? printQuantity(figure.quantity).text : 'absent';
}

/** "± 0.11 W (95 %)", or what is known of it. */
function uncertaintyOf({ figure }: PowerBar): string {
  return isPresent(figure) ? printUncertainty(figure.quantity) : '';
}

/** "± 0.11 W" alone: the level and what is left out stand in the method. */
export function shortUncertainty(bar: PowerBar): string {
  return /±\s[^(]*[^(\s]/.exec(uncertaintyOf(bar))?.[0] ?? '';
}

/** What the bars and whiskers are, and why bars are missing. */
export function powerMethod({ groups }: PowerByPhase): string {
  const bars = groups.flatMap((group) => group.bars.map((bar) => ({ ...bar, phase: group.phase })));
  const unknown = bars.some(({ figure }) => isPresent(figure) && standardUncertainty(figure.quantity) === null);
  const repeated = bars.some(({ figure }) => isPresent(figure) && figure.quantity.repeatabilityOnly);
  const absent = bars.flatMap(({ figure, alias, phase }) =>
    isPresent(figure) ? [] : [`No bar for ${alias} ${phase}: ${figure.why}`],
  );
  const whiskers = 'Bars are means over time within the phase; whiskers are 95 % intervals.';
  return [
    whiskers,
    ...unstatedPlaces(bars),
    ...(repeated ? ['Where the instrument states no accuracy they hold repeatability only.'] : []),
    ...(unknown ? ['A bar without whisker has an unknown uncertainty.'] : []),
    ...absent,
  ].join(' ');
}

/** Bars whose place of measurement is unknown may differ by the loss in an adapter: the reader is told. */
function unstatedPlaces(bars: readonly PowerBar[]): string[] {
  const runs = [...new Set(bars.filter(({ at }) => at === null).map(({ alias }) => alias))].filter((alias) => alias !== '');
  if (bars.every(({ at }) => at !== null)) return [];
  return [`Where the power is measured is not stated${runs.length > 0 ? ` for ${listed(runs)}` : ''}.`];
}

/** Mean and 95 % interval of each bar, W. */
export function powerCsv({ groups }: PowerByPhase): string {
  const rows = groups.flatMap(({ phase, bars }) =>
    bars.map(({ alias, figure }) => {
      if (!isPresent(figure)) return [alias, phase, '', '', '', figure.why];
      const interval = intervalOf(figure);
      return [alias, phase, figure.quantity.value, interval?.[0] ?? '', interval?.[1] ?? '', ''];
    }),
  );
  return csv([['run', 'phase', 'mean_W', 'low95_W', 'high95_W', 'absent'], ...rows]);
}

export function powerTable({ groups }: PowerByPhase): Drawn['table'] {
  const rows = groups.flatMap(({ phase, bars }) => bars.map((bar) => [phase, bar.alias, meanOf(bar), uncertaintyOf(bar)]));
  return { caption: 'Mean power of each phase', head: ['Phase', 'Run', 'Mean power', 'Uncertainty'], rows };
}
