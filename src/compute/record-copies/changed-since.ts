/** What is no longer as a record copy has it: only what the site shows counts as still there (law 9). */

import { definitionOf } from '../../figures/catalogue.ts';
import { allLogs, type PublishedLog } from '../../figures/figures-json.ts';
import { compareText } from '../../problem.ts';
import type { Gathered, GatheredRun } from '../models/gathered.ts';
import { figuresOf } from '../models/gathered-figures.ts';
import type { ChangedSince } from '../models/record-copies.ts';
import { changedFigures } from './changed-figures.ts';

/** The site as it is now. */
export interface Living {
  /** The comparison that a copy was made from, where the site has it. */
  readonly comparison: Gathered | null;
  /** Runs of the site by the id that the copy knows them by. */
  readonly runs: ReadonlyMap<string, GatheredRun>;
  /** Digest of each figure's method, by the figure's name. */
  readonly methods: Readonly<Record<string, string>>;
}

/** Compares what was recorded with what the site has now. */
export function changedSince(then: Gathered, { comparison, runs, methods }: Living): ChangedSince {
  const gone = then.runs.filter(({ run }) => !runs.has(run)).map(({ alias, title }) => ({ alias, title }));
  const pairs = then.runs.flatMap((was): Pair[] => {
    const is = runs.get(was.run);
    return is === undefined ? [] : [{ was, is }];
  });
  const figures = [
    ...(comparison === null ? [] : [changedFigures('the comparison', figuresOf(then), figuresOf(renamed(comparison, then)))]),
    ...pairs.map(({ was, is }) => changedFigures(was.title, figuresOf(was), figuresOf(is))),
  ];
  const changes = {
    comparison: comparison === null ? [] : whatChanged(then, comparison),
    gone,
    files: pairs.flatMap(changedFiles),
    stated: pairs.flatMap(changedStated),
    figures: figures.filter(({ rows, finer }) => rows.length > 0 || finer > 0),
    methods: changedMethods(then.methods, methods),
  };
  return { nothing: Object.values(changes).every(({ length }) => length === 0), ...changes };
}

interface Pair {
  readonly was: GatheredRun;
  readonly is: GatheredRun;
}

/** Title, reference and runs of the comparison itself. */
function whatChanged(then: Gathered, now: Gathered): string[] {
  const title = now.title === then.title ? [] : [`It is now titled “${now.title}”.`];
  const reference = referenceOf(now).run === referenceOf(then).run ? [] : [`Its reference run is now “${referenceOf(now).title}”.`];
  const added = now.runs.filter(({ run }) => !then.runs.some((was) => was.run === run));
  const left = then.runs.filter(({ run }) => !now.runs.some((is) => is.run === run));
  return [
    ...title,
    ...reference,
    ...added.map((run) => `It now has “${run.title}” too.`),
    ...left.map((run) => `It no longer has “${run.title}”.`),
  ];
}

function referenceOf({ runs, reference }: Gathered): GatheredRun {
  return runs.find(({ alias }) => alias === reference)!;
}

/** The comparison of now in the words of then, since its figures are addressed by its aliases. */
function renamed(now: Gathered, then: Gathered): Gathered {
  const former = new Map(
    now.runs.flatMap(({ alias, run }) => {
      const was = then.runs.find((each) => each.run === run);
      return was === undefined ? [] : [[alias, was.alias] as const];
    }),
  );
  const figures = Object.entries(now.figures).map(([address, figure]) => {
    const [name = '', alias = '', ...rest] = address.split('.');
    return [former.has(alias) ? [name, former.get(alias), ...rest].join('.') : address, figure] as const;
  });
  return { ...now, figures: Object.fromEntries(figures) };
}

/** Logs by what they are, tables by their path. */
function changedFiles({ was, is }: Pair): ChangedSince['files'] {
  const logs = changedLogs(allLogs(was), allLogs(is));
  const then = new Map(was.tables.map(({ file, sha256 }) => [file, sha256]));
  const now = new Map(is.tables.map(({ file, sha256 }) => [file, sha256]));
  const tables = differing(then, now).map(({ name, ...each }) => ({ file: name, ...each }));
  return [...logs, ...tables].map((each) => ({ run: was.title, ...each }));
}

/** By their place: a log that goes to another file is the same log. */
function changedLogs(was: readonly PublishedLog[], is: readonly PublishedLog[]) {
  const places = Array.from({ length: Math.max(was.length, is.length) }, (_, k) => [was[k], is[k]] as const);
  return places
    .filter(([then, now]) => then?.sha256 !== now?.sha256)
    .map(([then, now]) => ({ file: (then ?? now)!.file, was: then?.sha256 ?? '', is: now?.sha256 ?? '' }));
}

function changedStated({ was, is }: Pair): ChangedSince['stated'] {
  const rows = [...stated(was), ...stated(is)];
  const labels = new Map(rows.toReversed().map(({ key, label }) => [key, label]));
  const texts = (run: GatheredRun) => new Map(stated(run).map(({ key, text }) => [key, text]));
  return differing(texts(was), texts(is)).map(({ name, ...each }) => ({ run: was.title, label: labels.get(name)!, ...each }));
}

/** All that the author says of a run. */
function stated(run: GatheredRun): { readonly key: string; readonly label: string; readonly text: string }[] {
  const rows = (kind: string, of: GatheredRun['setting']) =>
    of.map(({ label, text }) => ({ key: `${kind}/${label}`, label, text }));
  return [
    ...rows('run', [
      { label: 'id', text: run.run },
      { label: 'title', text: run.title },
      { label: 'date', text: run.date },
      { label: 'device', text: run.device.title },
      { label: 'specimen', text: run.specimen },
    ]),
    ...rows('setting', run.setting),
    ...rows('condition', run.conditions),
    ...run.instruments.map(({ id, title, accuracy }) => ({ key: `instrument/${id}`, label: title, text: accuracy })),
    ...run.channels.map(({ name, quantity, at, instrument }) => ({
      key: `channel/${name}`,
      label: `channel ${name}`,
      text: [quantity, instrument, at].filter((text) => text !== '').join(', '),
    })),
  ];
}

/** Entries of two maps that differ, those of the first before those that only the second has. */
function differing(then: ReadonlyMap<string, string>, now: ReadonlyMap<string, string>) {
  return [...new Set([...then.keys(), ...now.keys()])]
    .map((name) => ({ name, was: then.get(name) ?? '', is: now.get(name) ?? '' }))
    .filter(({ was, is }) => was !== is);
}

function changedMethods(then: Gathered['methods'], now: Living['methods']): ChangedSince['methods'] {
  const changed = Object.keys(then).filter((name) => then[name] !== now[name]);
  return changed.sort(compareText).map((name) => ({ name, label: definitionOf(name)?.label ?? name.replaceAll('_', ' ') }));
}
