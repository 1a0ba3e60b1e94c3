/** The figures of a run as other programs read them: `runs/<id>/figures.json`. The way back is `read-figures-json.ts`. */
import type { Quantity, Source } from '../quantities/quantity.ts';
import { degreesOfFreedom, interval95, standardUncertainty } from '../quantities/uncertainty.ts';
import { budgetOf } from './budget.ts';
import { definitionOf } from './catalogue.ts';
import { type Figure, type FigureMap, isPresent, type PresentFigure, type RunFigures } from './figure.ts';

export interface PublishedLog {
  readonly file: string;
  readonly sha256: string;
  readonly rows: number;
  readonly span_s: number;
}

/** A log that stands beside the first one. */
export interface OtherLog extends PublishedLog {
  readonly name: string;
  /** When its first row stands after that of the first log, s, and the standard uncertainty of that. */
  readonly begins_s: number;
  readonly u_s: number;
}

/** The first log under `log`, which most runs have alone; neither key where a run has none. */
export interface PublishedLogs {
  readonly log?: PublishedLog;
  readonly other_logs?: readonly OtherLog[];
}

/** All logs in the author's order. */
export function allLogs({ log, other_logs = [] }: PublishedLogs): readonly PublishedLog[] {
  return log ? [log, ...other_logs] : [];
}

export interface Published extends PublishedLogs {
  readonly run: string;
  readonly device: string;
  readonly specimen: string;
  /** Tables read beside the log, each with its digest. */
  readonly tables?: readonly { readonly file: string; readonly sha256: string }[];
  /** In the author's order. */
  readonly setting?: readonly Stated[];
  readonly conditions?: readonly Stated[];
  /** What else others need to know of it: plain data. */
  readonly about?: object;
  readonly derived: RunFigures;
}

/** A setting or condition: in the author's words, and as a quantity where it is one. */
export interface Stated {
  readonly name: string;
  readonly text: string;
  readonly quantity?: Quantity;
}

/**
 * The published object: `format` first, all other keys sorted by code units. Numbers are finite and unrounded; `u` is the root
 * sum of squares of `parts` in sorted order, null where it is unknown; a run's `budgets` have
 * of each part the standard uncertainty of its source, the sensitivity to it and its share of the variance; `dof` is null for infinitely many; `step`, where there is one,
 * is the coarsest instrument step that the value rests on, which printing is never finer than; `own_interval` tells that the interval
 * is not made of `parts` and `dof`.
 */
export function runFiguresJson({ setting, conditions, tables = [], derived, ...ids }: Published): object {
  const beside = tables.length > 0 ? { tables } : {};
  const stated = {
    ...(setting && { setting: publishStated(setting) }),
    ...(conditions && { conditions: publishStated(conditions) }),
  };
  return figuresJson({ ...ids, ...stated, ...beside, ...budgetsOf(derived.figures) }, derived.figures);
}

function publishStated(stated: readonly Stated[]): object[] {
  return stated.map(({ name, text, quantity }) => ({
    name,
    text,
    ...(quantity && { value: quantity.value, unit: quantity.unit }),
  }));
}

/** The same of figures that are not of one run: `head` says whose they are. */
export function figuresJson(head: object, derived: FigureMap): object {
  const entries = [...derived];
  const figures = Object.fromEntries(entries.map(([address, figure]) => [address, publishFigure(figure)]));
  const sources = sourcesOf(entries.map(([, figure]) => figure));
  return { format: 1, ...(sorted({ ...head, sources, figures }) as object) };
}

function publishFigure(figure: Figure): object {
  if (isPresent(figure)) return publishPresent(figure);
  const { absent, why, bound, of } = figure;
  return { absent, why, ...(bound ? { bound: { ...bound } } : {}), ...(of ? { of: { ...of } } : {}) };
}

function publishPresent({ name, quantity, interval, from, inferred, of }: PresentFigure): object {
  const definition = definitionOf(name);
  return {
    value: quantity.value,
    unit: quantity.unit,
    u: standardUncertainty(quantity),
    dof: degreesOfFreedom(quantity),
    interval: interval ?? interval95(quantity),
    ...(interval && { own_interval: true }),
    parts: quantity.parts && Object.fromEntries(quantity.parts.map((part) => [part.source.id, part.share])),
    ...(quantity.step === undefined ? {} : { step: quantity.step }),
    definition: definition?.definition ?? '',
    source: definition?.source ?? '',
    from: { ...from },
    ...(inferred ? { inferred } : {}),
    ...publishedOf(quantity.repeatabilityOnly === true, of),
  };
}

/** By address and source: what stands beside the contribution in `parts`. Exact figures have none. */
function budgetsOf(figures: FigureMap): object {
  const budgets = [...figures].flatMap(([address, figure]) => {
    const rows = isPresent(figure) ? budgetOf(figure.quantity) : [];
    const told = rows.map(({ source, u, unit, sensitivity, share }) => [source, { u, unit, sensitivity, share }] as const);
    return rows.length === 0 ? [] : [[address, Object.fromEntries(told)] as const];
  });
  return { budgets: Object.fromEntries(budgets) };
}

function publishedOf(repeatabilityOnly: boolean, of: PresentFigure['of']): object {
  const all = { ...of, ...(repeatabilityOnly ? { repeatability_only: true } : {}) };
  return Object.keys(all).length > 0 ? { of: all } : {};
}

function sourcesOf(figures: readonly Figure[]): Record<string, Omit<Source, 'id' | 'standard'>> {
  const sources: Record<string, Omit<Source, 'id' | 'standard'>> = {};
  const all: Source[] = figures.filter(isPresent).flatMap(({ quantity }) => (quantity.parts ?? []).map((part) => part.source));
  for (const { id, standard: _, ...rest } of all) sources[id] = rest;
  return sources;
}

/** A copy with the keys of every object in order of code units; the order of lists stays. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`a published number is not finite: ${value}`);
  if (typeof value !== 'object' || value === null) return value;
  const keys = Object.keys(value).sort();
  return Object.fromEntries(keys.map((key) => [key, sorted((value as Record<string, unknown>)[key])]));
}
