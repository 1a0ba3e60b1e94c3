/** Log + context → all figures of a run. */
import type { Log } from '../intake/log.ts';
import { absent } from './absent.ts';
import { definitionOf } from './catalogue.ts';
import { clockFigures } from './clock/clock.ts';
import type { RunContext } from './context.ts';
import { type Figure, type FigureMap, isPresent, type RunFigures } from './figure.ts';
import { withHandFigures } from './hand/hand-figures.ts';
import { loadChange } from './load-changed.ts';
import { phaseDurations } from './phase-duration.ts';
import { phasesOf } from './phases.ts';
import { metersOf } from './power/meters.ts';
import { powerFigures } from './power/power.ts';
import { scoreFigures } from './scores/scores.ts';
import type { Soak } from './soak.ts';
import { soundFigures } from './sound/sound.ts';
import { intervalOf, isTellable } from './sources.ts';
import { surfaceFigures } from './surface/surface.ts';
import type { RunTables } from './tables.ts';
import { loadFits } from './thermal/load-fits.ts';
import { thermalFigures } from './thermal/thermal.ts';
import { warmingOf } from './thermal/warming.ts';

/**
 * Derives every thermal, clock and power figure of the catalogue, present with its uncertainty or absent with the reason.
 * `log` is what `correctedLog` makes of the log that was read.
 * Keys are addresses without the alias; the primary channel stands under the bare name. Pure and without a clock.
 */
export function derive(log: Log, context: RunContext, tables: RunTables = {}): RunFigures {
  const { phases, inferences, untold } = phasesOf(log, context);
  const inferred = phases.length > 0 ? inferences.map(({ statement }) => statement) : [];
  const unfitted: Soak = { log, context, phases, inferred, ...(untold === undefined ? {} : { untold }), warming: null };
  const { meters, why } = metersOf(unfitted);
  const primary = meters[0] ?? null;
  const changed = loadChange(unfitted, primary);
  const fits = loadFits(unfitted, primary);
  const soak: Soak = { ...unfitted, warming: changed ? 'load changed' : warmingOf(fits[0]) };
  const entries = [
    ...phaseDurations(soak),
    ...thermalFigures(soak, primary ?? why ?? { absent: 'no-channel', why: 'The log has no power.' }, changed, fits),
    ...clockFigures(soak),
    ...powerFigures(soak, meters, why),
    ...soundFigures(soak),
    ...scoreFigures(soak, tables.scores, primary ?? why),
    ...surfaceFigures(soak, tables.surface),
  ];
  const figures = firstOfEach(entries.map(([address, figure]) => [address, toldOf(log, figure)]));
  return { figures: withHandFigures(context, figures), phases, inferences };
}

/** Means of neighbours keep energies and means; peaks, events, shares of time and the scatter of single readings they do not. */
function toldOf({ condensed }: Log, figure: Figure): Figure {
  if (!condensed || !definitionOf(figure.name)?.ofSingleReadings) return figure;
  const why = `The log has ${condensed.rows} rows, so that up to ${condensed.longest} neighbours were taken as one; this figure rests on single readings. Keep a copy of the stretch that matters beside the log and make a run of it.`;
  return absent(figure.name, { absent: 'not-observed', why });
}

/** A channel that is named like a phase keeps its address; the phase's figure gives way. */
function firstOfEach(entries: readonly (readonly [string, Figure])[]): FigureMap {
  const figures = new Map<string, Figure>();
  for (const [address, figure] of entries) if (!figures.has(address)) figures.set(address, bounded(figure));
  return figures;
}

/** Readings near the ends of what a double can hold overflow on the way: that is said, never published. */
function bounded(figure: Figure): Figure {
  if (!isPresent(figure)) return figure;
  const { quantity, interval } = figure;
  const ends = interval ?? intervalOf(quantity) ?? [];
  if (isTellable(quantity) && ends.every(Number.isFinite)) return figure;
  return absent(figure.name, { absent: 'out-of-range', why: 'The readings are too large or too small to compute with.' });
}
