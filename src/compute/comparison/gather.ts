/** A comparison with its runs → all that its page prints, as JSON. */

import { CATALOGUE } from '../../figures/catalogue.ts';
import { cautions, mergeCautions } from '../../figures/cautions.ts';
import type { Figure, FigureMap, RunFigures } from '../../figures/figure.ts';
import { figuresJson } from '../../figures/figures-json.ts';
import type { RunSeries } from '../../plots/data/series.ts';
import type { Comparison, Register, Run } from '../../register/register.ts';
import { repeatKey } from '../../register/resolved/check-settings.ts';
import { conditionRows } from '../contents/figure-text.ts';
import { instrumentRow } from '../contents/instruments.ts';
import type { FiguresJson, Gathered, GatheredRepeat, GatheredRun } from '../models/gathered.ts';
import type { RunSummary } from '../steps/runs/run-step.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import { digestOf } from '../store/digest.ts';
import { publishedLogs } from './published-logs.ts';

/** A run with its figures, and what they were made from. */
export interface ReadRun {
  readonly run: Run;
  readonly derived: RunFigures;
  readonly summary: RunSummary;
  readonly tables: readonly ReadTable[];
  readonly ambient: Figure | null;
}

/** A run with all that was computed of it. */
export interface GatherableRun extends ReadRun {
  /** Read when they are needed. */
  readonly series: () => RunSeries;
}

export interface Gatherable {
  readonly register: Register;
  readonly comparison: Comparison;
  readonly figures: FigureMap;
  /** By run id. */
  readonly runs: ReadonlyMap<string, GatherableRun>;
}

/** Gathers a comparison; null where one of its runs could not be read. */
export function gather({ register, comparison, figures, runs }: Gatherable): Gathered | null {
  const gathered = [...comparison.runs].flatMap(([alias, id]) => {
    const found = runs.get(id);
    return found === undefined ? [] : [gatherRun(register, alias, found)];
  });
  if (gathered.length < comparison.runs.size) return null;
  const repeats = repeatsOf(comparison, runs);
  if (repeats === null) return null;
  const published = publishedMap(figures);
  return {
    id: comparison.id,
    title: comparison.title,
    reference: comparison.reference,
    runs: gathered,
    ...settingsOf(comparison),
    ...(repeats.length > 0 ? { repeats } : {}),
    ...quotedOf(register, comparison),
    ...published,
    methods: methodsOf([published, ...gathered]),
  };
}

/** Which runs belong to which setting, where that is not one each. */
function settingsOf({ settings, runs }: Comparison): Pick<Gathered, 'settings'> {
  if (settings.size === runs.size) return {};
  const aliases = new Map([...runs].map(([alias, id]) => [id, alias]));
  const named = [...settings].map(([alias, ids]) => [alias, ids.map((id) => aliases.get(id)!)] as const);
  return { settings: Object.fromEntries(named) };
}

/** What others published, as the comparison names it. */
function quotedOf(register: Register, { quoted = [] }: Comparison): Pick<Gathered, 'quoted'> {
  if (quoted.length === 0) return {};
  return {
    quoted: quoted.map((id) => {
      const { title, source, device, conditions, figures } = register.quoted.get(id)!;
      const said = [...(device === undefined ? [] : [{ name: 'device', text: device }]), ...conditions];
      const { author, address, accessed } = source;
      return { id, title, author, address, accessed, conditions: conditionRows(said), ...publishedMap(figures) };
    }),
  };
}

function repeatsOf({ repeats }: Comparison, runs: Gatherable['runs']): GatheredRepeat[][] | null {
  const found = repeats.flatMap((id) => runs.get(id) ?? []);
  if (found.length < repeats.length) return null;
  return [...Map.groupBy(found, ({ run }) => repeatKey(run)).values()].map((alike) =>
    alike.map(({ run, derived }) => ({
      run: run.id,
      title: run.title,
      device: run.device,
      specimen: run.specimen,
      ...publishedMap(derived.figures),
    })),
  );
}

/** One run, under an alias. */
export function gatherRun(register: Register, alias: string, computed: GatherableRun): GatheredRun {
  return { ...gatherFacts(register, alias, computed), series: computed.series() };
}

/** The same less its series. */
export function gatherFacts(
  register: Register,
  alias: string,
  { run, derived, summary, tables, ambient }: ReadRun,
): Omit<GatheredRun, 'series'> {
  const device = register.devices.get(run.device)!;
  return {
    alias,
    run: run.id,
    title: run.title,
    date: run.date,
    device: { id: device.id, title: device.title, maker: device.maker, invented: device.invented },
    specimen: run.specimen,
    setting: conditionRows(run.setting),
    conditions: conditionRows(run.conditions),
    ambient: publishedMap(new Map(ambient === null ? [] : [['ambient', ambient]])),
    instruments: run.instruments.map((id) => instrumentRow(register, id)),
    channels: summary.channels.map(({ name, quantity, at = '', instrument = '' }) => ({ name, quantity, at, instrument })),
    ...publishedLogs(summary),
    tables: tables.map(({ file, sha256 }) => ({ file: `data/${file}`, sha256 })),
    ...publishedMap(derived.figures),
    cautions: mergeCautions(cautions(run.context, derived)).map(({ done, risk }) => ({ done, risk })),
  };
}

function publishedMap(figures: FigureMap): FiguresJson {
  const { sources, figures: published } = figuresJson({}, figures) as FiguresJson;
  return { sources, figures: published };
}

/** The methods of all figures there, by the figure's name. */
function methodsOf(maps: readonly FiguresJson[]): Readonly<Record<string, string>> {
  const names = new Set(maps.flatMap(({ figures }) => Object.keys(figures).map((address) => address.split('.', 1)[0]!)));
  return methodVersions(names);
}

/** For each name the digest of what the catalogue says of the figure. */
export function methodVersions(names: ReadonlySet<string>): Readonly<Record<string, string>> {
  const used = CATALOGUE.filter(({ name }) => names.has(name));
  const entries = used.map(({ name, definition, formula, source }) => [name, digestOf([definition, formula, source])] as const);
  return Object.fromEntries(entries.toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
