/** What the log says of the time that a test's repeats took: energy per task, clock, power. */

import type { Part, Quantity } from '../../quantities/quantity.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { absent, isReason, noChannel, type Reason } from '../absent.ts';
import { type Measured, meanOf } from '../average.ts';
import type { FigureName } from '../catalogue.ts';
import { energyWithin } from '../power/energy.ts';
import { type Meter, meterMean } from '../power/meters.ts';
import { figureOf } from '../present.ts';
import { channelsOf, type Entry, type Soak } from '../soak.ts';
import { quantityOf, samplingPart, scaled, stepPart, withParts } from '../sources.ts';
import { type Edges, edgesOfTest, type TestEdges } from './edges.ts';
import { repeatsInflation } from './scatter-of-repeats.ts';
import { ofTest, type ScoredTest } from './score-table.ts';
import { type Window, windowsOf } from './windows.ts';

/** A share of a figure that may not be in doubt by a lag. */
const DOUBTFUL = 0.25;

/** `energy_per_task` always, present or absent; clock and power only where the log covers a repeat. */
export function windowFigures(soak: Soak, test: ScoredTest, meter: Meter | Reason | null, edges: Edges | null): Entry[] {
  const address = (name: FigureName) => `${name}.${test.id}`;
  const of = ofTest(test);
  const windows = windowsOf(soak, test);
  if (isReason(windows)) return [[address('energy_per_task'), absent('energy_per_task', { ...windows, of })]];
  const metered = meter ?? noChannel('power');
  const inferred = isReason(metered) ? [] : metered.inferred;
  const late = edges && edgesOfTest(soak, edges, windows);
  const counted = channelsOf(soak.log, 'energy').length > 0;
  const figure = (
    name: FigureName,
    measure: (window: Window, at: string) => Measured | Reason,
    edge: Edge | null = null,
  ): Entry => {
    const told = overRepeats(soak, windows, address(name), measure);
    const outcome = edge && !isReason(told) ? edge(told) : told;
    return [address(name), isReason(outcome) ? absent(name, { ...outcome, of }) : figureOf(name, soak, outcome, { of, inferred })];
  };
  return [
    figure(
      'energy_per_task',
      (window, at) => energyWithin(soak, isReason(metered) ? null : metered, window, at) ?? (metered as Reason),
      late && !counted ? (told) => withEdges(told, late, 1) : null,
    ),
    figure(
      'score_power',
      (window, at) => (isReason(metered) ? metered : meterMean(soak, metered, window.rows, at)),
      late && ((told) => withEdges(told, late, 1 / late.length)),
    ),
    figure('score_clock', (window, at) => clockIn(soak, window, at)),
  ];
}

type Edge = (told: Measured) => Measured | Reason;

/** What a lag of the power's edges leaves open is shared by all repeats: more of them don't make it smaller. */
function withEdges(told: Measured, { part, words, moved }: TestEdges, factor: number): Measured | Reason {
  const share = Math.abs((moved * factor) / told.quantity.value);
  if (share > DOUBTFUL)
    return {
      absent: 'too-short',
      why: `The edges of the power lie ${words}: of repeats so short, more than a quarter of what they took is in doubt.`,
    };
  return { ...told, quantity: withParts(told.quantity, scaled([part], factor)), of: { ...told.of, lag: words } };
}

function clockIn(soak: Soak, { rows, repeat }: Window, at: string): Measured | Reason {
  const clock = channelsOf(soak.log, 'clock')[0];
  if (!clock) return noChannel('clock');
  return meanOf(soak, clock, rows, at, { words: `the time that repeat ${repeat} took` });
}

/**
 * Mean over the windows. Errors of the instruments are shared by all; the scatter is that of the repeats, s/√n, or what the
 * scatter within the windows gives, where that is more (or there is one window only).
 */
function overRepeats(
  soak: Soak,
  windows: readonly Window[],
  address: string,
  measure: (window: Window, at: string) => Measured | Reason,
): Measured | Reason {
  const outcomes = windows.map((window) => measure(window, `${address}.${window.repeat}`));
  const measured = outcomes.filter((each): each is Measured => !isReason(each));
  const [first] = measured;
  if (!first) return outcomes[0] as Reason;
  const n = measured.length;
  const quantities = measured.map(({ quantity }) => quantity);
  const own = `run:${soak.context.run}/${address}.`;
  const parts = quantities.flatMap((quantity) => (quantity.parts ?? []).map(({ source, share }) => ({ source, share: share / n })));
  const shared = parts.filter(({ source }) => !source.id.startsWith(own));
  const within = quantities.map((quantity) => ownScatter(quantity, own));
  const values = quantities.map(({ value }) => value);
  const step = Math.max(...quantities.map((quantity) => quantity.step ?? 0));
  const scatter = scatterOf(values, within, step);
  const lines = measured.flatMap(({ from }) => from.rows ?? []);
  return {
    quantity: quantityOf(mean(values), first.quantity.unit, [...shared, scatterPart(soak, first, address, scatter, values, step)], {
      stated: quantities.every(({ repeatabilityOnly }) => !repeatabilityOnly),
      step,
    }),
    from: { ...first.from, rows: lines.length > 0 ? [Math.min(...lines), Math.max(...lines)] : null },
    of: { ...first.of, n, ...(n > 1 ? { spread: sampleDeviation(values) } : {}) },
  };
}

function ownScatter({ parts, ...rest }: Quantity, own: string): number {
  return standardUncertainty({ ...rest, parts: (parts ?? []).filter(({ source }) => source.id.startsWith(own)) }) ?? 0;
}

/**
 * The scatter under the figure's own name. Windows that all read the same have no scatter but the rounding of that reading, which is one
 * and the same error in every test of the run: it goes by channel and reading.
 */
function scatterPart(
  soak: Soak,
  { of }: Measured,
  address: string,
  { u, dof }: { readonly u: number; readonly dof: number | null },
  values: readonly number[],
  step: number,
): Part {
  const same =
    dof === null && step > 0 && values.every((value) => value === values[0]) && u <= (step / Math.sqrt(12)) * (1 + 1e-12);
  return same ? stepPart(soak.context, `${of.channel} at ${values[0]}`, step) : samplingPart(soak.context, address, u, dof);
}

/** Repeats that all read the same share the error of their step: more of them don't make it smaller. */
function scatterOf(
  values: readonly number[],
  within: readonly number[],
  step: number,
): { readonly u: number; readonly dof: number | null } {
  const n = values.length;
  const inside = Math.max(Math.sqrt(within.reduce((sum, u) => sum + u * u, 0)) / n, step / Math.sqrt(12));
  const between = n > 1 ? (sampleDeviation(values) / Math.sqrt(n)) * repeatsInflation(values) : 0;
  return between > inside ? { u: between, dof: n - 1 } : { u: inside, dof: null };
}
