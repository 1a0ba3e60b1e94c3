/** The runs of each setting put together: one figure a setting, with what is known of how runs lie apart. */
import { combine } from '../../quantities/combine.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import { absent, type Of, type Reason } from '../absent.ts';
import { type AbsentFigure, type Figure, isPresent, type PresentFigure } from '../figure.ts';
import { listed } from '../in-words.ts';
import { quantityOf } from '../sources.ts';
import { type BetweenRuns, betweenRuns, isOwn } from './between-runs.ts';
import { type Compared, type ComparedRun, type ComparedSetting, evenMean, type Origin, type Setting } from './compared.ts';
import { repeatScatter } from './repeat-scatter.ts';

/** A run lacks the figure because nobody measured it, and not because of how it went. */
const NOT_MEASURED: readonly string[] = ['no-channel', 'no-instrument', 'no-condition', 'no-rating', 'no-readings'];

export interface Settled {
  readonly reference: Setting;
  readonly others: readonly Setting[];
}

/**
 * Each setting with the mean of its runs' figures. Scatter within a run is in how the runs lie apart already, so it is not added again:
 * what a figure keeps of its own runs gives way to the spread between runs, pooled over the comparison and the other repeats; what the
 * runs share (an instrument) stays. With no repeats anywhere, a setting's figures are those of its one run.
 */
export function settled({ id, reference, others, repeats = [] }: Compared): Settled {
  const settings = [reference, ...others];
  const alike = [...settings, ...repeats.map((runs) => ({ alias: '', runs }))];
  const addresses = [...new Set(settings.flatMap(({ runs }) => runs.flatMap(({ figures }) => [...figures.keys()])))];
  const spreads = new Map(addresses.map((address) => [address, betweenRuns(id, address, alike)]));
  const pooled = repeatScatter(id, settings, spreads);
  const [base, ...rest] = settings.map((setting) => settingOf(setting, spreads, pooled));
  return { reference: base!, others: rest };
}

function settingOf(
  { alias, runs }: ComparedSetting,
  spreads: ReadonlyMap<string, BetweenRuns>,
  pooled: ReadonlyMap<Figure, Figure>,
): Setting {
  const [first] = runs as readonly [ComparedRun, ...ComparedRun[]];
  const addresses = [...new Set(runs.flatMap(({ figures }) => [...figures.keys()]))];
  const figures = new Map<string, Figure>();
  const origins = new Map<string, Origin>();
  for (const address of addresses) {
    const spread = spreads.get(address)!;
    const figure = together(alias, runs, address, spread);
    figures.set(address, pooled.get(figure) ?? figure);
    const names = runs.filter(({ figures: own }) => own.has(address)).map(({ run }) => `${run}/${address}`);
    origins.set(address, { names, dof: spread.dof });
  }
  const { clockSetting, device, specimen, run } = first;
  return {
    alias,
    run,
    runs: runs.map((each) => each.run),
    device,
    specimen,
    ...(clockSetting === undefined ? {} : { clockSetting }),
    figures,
    origins,
  };
}

/** The figure of all runs of a setting: of the only run that has it, the mean of theirs, or the reason of the first that has none. */
function together(alias: string, runs: readonly ComparedRun[], address: string, spread: BetweenRuns): Figure {
  const each = runs.flatMap(({ run, figures }) => {
    const figure = figures.get(address);
    return figure ? [{ run, figure }] : [];
  });
  const had = each.filter((one): one is Had => isPresent(one.figure));
  const lost = each.find((one): one is { run: string; figure: AbsentFigure } => !isPresent(one.figure) && !unmeasured(one.figure));
  const [first] = had;
  if (!first || (lost && runs.length > 1)) return (lost ?? each[0]!).figure;
  if (runs.length === 1 && spread.dof === 0) return first.figure;
  const unlike = unlikeness(alias, had);
  if (unlike) return absent(first.figure.name, unlike);
  return meanFigure(had, runs.length, spread, alias);
}

interface Had {
  readonly run: string;
  readonly figure: PresentFigure;
}

function unmeasured({ absent: code }: AbsentFigure): boolean {
  return NOT_MEASURED.includes(code);
}

/** Runs of one setting must have measured the same thing before a mean of theirs is one. */
function unlikeness(alias: string, had: readonly Had[]): Reason | null {
  const differs = (key: string) => new Set(had.map(({ figure }) => figure.of?.[key])).size > 1;
  if (differs('at') || differs('spot'))
    return { absent: 'different-places', why: `The runs of ${alias} were measured at different places.` };
  if (differs('clock'))
    return {
      absent: 'different-clocks',
      why: `The runs of ${alias} logged different clocks: requested, delivered, or not stated.`,
    };
  const units = [...new Set(had.map(({ figure }) => figure.quantity.unit))];
  if (units.length > 1 || differs('better'))
    return { absent: 'out-of-range', why: `The runs of ${alias} do not state one unit and direction: ${listed(units)}.` };
  return null;
}

function meanFigure(had: readonly Had[], runs: number, spread: BetweenRuns, alias: string): PresentFigure {
  const n = had.length;
  const value = evenMean(had.map(({ figure }) => figure.quantity.value));
  const between = spread.partsOf(alias, value, n);
  const quantity = meanQuantity(had, value, between);
  const [{ figure: first }] = had as [Had];
  const inferred = [...new Set(had.flatMap(({ figure }) => figure.inferred ?? []))];
  const count: Of = runs > 1 ? { runs: n, ...(n < runs ? { runs_without: runs - n } : {}) } : {};
  return {
    name: first.name,
    quantity,
    from: first.from,
    ...(inferred.length > 0 ? { inferred } : {}),
    of: { ...sharedOf(had), ...count },
  };
}

/** `between` in the place of the runs' own scatter. A score of one repeat, whose own scatter is unknown, gets one by it. */
function meanQuantity(had: readonly Had[], value: number, between: readonly Part[]): Quantity {
  const { unit } = had[0]!.figure.quantity;
  const terms = had.map(({ figure: { quantity } }) => ({
    quantity: { ...quantity, parts: quantity.parts ?? [] },
    sensitivity: 1 / had.length,
  }));
  const step = Math.max(0, ...had.map(({ figure }) => figure.quantity.step ?? 0));
  const mean = combine(value, unit, terms);
  const parts = [...shared(mean.parts ?? [], had), ...between];
  return quantityOf(value, unit, parts, { stated: !mean.repeatabilityOnly, step });
}

function shared(parts: readonly Part[], had: readonly Had[]): Part[] {
  return parts.filter(({ source }) => !had.some(({ run }) => isOwn(source.id, run)));
}

/** What all runs say of the figure alike. */
function sharedOf(had: readonly Had[]): Of {
  const [first, ...rest] = had.map(({ figure }) => figure.of ?? {});
  const alike = Object.entries(first!).filter(([key, said]) => rest.every((of) => of[key] === said));
  return Object.fromEntries(alike);
}
