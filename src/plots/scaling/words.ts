/** What a plot of scaling says in words and in tables. */
import { isPresent } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import {
  absences,
  cellsOf,
  intervalWords,
  signsSay,
  spreadsOf,
  toldText,
  uncertaintyText,
  valueText,
  verdictOf,
} from '../data/plotted-comparison.ts';
import { csv } from '../drawing/csv.ts';
import { isCut } from '../drawing/dots.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { Scaling } from './plan.ts';

/** "Speedup over measured clock, against rated: brisk and fast". */
export function scalingTitle({ reference, points }: Scaling): string {
  return `Speedup over measured clock, against ${reference.alias}: ${listed(points.map(({ alias }) => alias))}`;
}

export function scalingAlt({ reference, points, law }: Scaling): string {
  const told = points.map(
    ({ alias, clock, speedup }) => `${alias} at ${valueText(clock)} times the clock is ${valueText(speedup)} times as fast`,
  );
  return [
    `Signs for runs, speedup over clock ratio; ${reference.alias} stands at 1 and 1.`,
    `${listed(told)}.`,
    'A straight line shows a speed in proportion to the clock.',
    ...(law ? [`A curve shows the fitted power law with the exponent ${toldText(law.exponent)}: ${verdictOf(law.exponent)}.`] : []),
  ].join(' ');
}

export function scalingMethod({ runs, points, law, whyNoLaw, reference }: Scaling): string {
  const [clocks, speedups] = [points.map(({ clock }) => clock), points.map(({ speedup }) => speedup)];
  const cut = [clocks, speedups].some((each) => isCut(spreadsOf(each), 1));
  return [
    `Clock and speed are multiples of those of ${reference.alias}; the clock is the measured one, the speed ${testsOf(points)}.`,
    ...intervalWords([...clocks, ...speedups], cut),
    ...signsSay(speedups, reference.alias, true),
    ...leftOut(points),
    'The broken line is what linear scaling would give.',
    law ? 'The curve is the fitted power law, over the clocks that were measured.' : `No power law is drawn. ${whyNoLaw}`,
    ...absences(
      'sign',
      runs.flatMap(({ alias, clock, speedup }) => [speedup, clock].map((figure) => ({ name: alias, figure }))),
    ),
  ].join(' ');
}

/** "the geometric mean over 4 tests". */
function testsOf(points: Scaling['points']): string {
  const counts = [...new Set(points.map(({ speedup }) => Number(speedup.of?.tests)))];
  const [count] = counts;
  if (counts.length > 1) return 'the geometric mean over the tests that both runs have';
  return count === 1 ? 'that of the one test' : `the geometric mean over ${count} tests`;
}

function leftOut(points: Scaling['points']): string[] {
  return points.flatMap(({ alias, speedup }) => (speedup.of?.left_out ? [`Left out for ${alias}: ${speedup.of.left_out}.`] : []));
}

export function scalingCsv({ runs, reference }: Scaling): string {
  const head = ['run', 'clock_ratio', 'clock_low95', 'clock_high95', 'speedup', 'speedup_low95', 'speedup_high95', 'absent'];
  const rows = runs.map(({ alias, clock, speedup }) => {
    const [x, y] = [cellsOf(clock), cellsOf(speedup)];
    const why = [...new Set([x[3], y[3]])].filter((text) => text !== '').join(' ');
    return [alias, ...x.slice(0, 3), ...y.slice(0, 3), why];
  });
  return csv([head, [reference.alias, 1, 1, 1, 1, 1, 1, ''], ...rows]);
}

export function scalingTable({ runs, reference }: Scaling): Drawn['table'] {
  const both = (figure: Parameters<typeof valueText>[0]) => [valueText(figure), uncertaintyText(figure)];
  return {
    caption: `Clock and speed as multiples of those of ${reference.alias}`,
    head: ['Run', 'Clock ratio', 'Uncertainty', 'Speedup', 'Uncertainty', 'Speedup ÷ clock ratio', 'Uncertainty'],
    rows: [
      [reference.alias, '1', '', '1', '', '1', ''],
      ...runs.map(({ alias, clock, speedup, efficiency }) => [alias, ...both(clock), ...both(speedup), ...both(efficiency)]),
    ],
  };
}

/** "power law, exponent 0.733": beside the curve. */
export function lawText({ law }: Scaling): string {
  return law && isPresent(law.exponent) ? `power law, exponent ${valueText(law.exponent)}` : '';
}
