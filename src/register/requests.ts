/** What a note asks to be drawn or tabulated. Words reads these from directives; plots draws them; neither knows the other. */
import { error, type Place, type Problem } from '../problem.ts';
import { ID_RULE, idFromWords, isId, meant, oneOf } from './values/names.ts';

/** Kinds that draw the figures of a comparison. */
const COMPARED_KINDS = ['scaling', 'deltas', 'scores'] as const;
export type ComparedKind = (typeof COMPARED_KINDS)[number];

export const PLOT_KINDS = [
  'trace',
  'step-response',
  'power-by-phase',
  'against',
  'thermal',
  'stability',
  ...COMPARED_KINDS,
] as const;
export type PlotKind = (typeof PLOT_KINDS)[number];

export interface PlotRequest {
  readonly kind: PlotKind;
  /** Stable within the page, from kind, channels and runs, or the author's own `id`. */
  readonly id: string;
  /**
   * In the order asked for; `alias` is what labels say, `run` the run's id, `slot` the alias's place among the note's runs,
   * from 0: what a run looks like follows it, so that a run looks the same in all plots of a note.
   */
  readonly runs: readonly { readonly alias: string; readonly run: string; readonly slot: number }[];
  /** Ids of the attempts that a plot of the kind `stability` draws; such a plot has no runs. */
  readonly attempts?: readonly { readonly alias: string; readonly id: string }[];
  /** The comparison that a plot of its figures draws; such a plot has no runs. */
  readonly comparison?: {
    readonly alias: string;
    readonly id: string;
    /** Places of the note's runs by run id: what a run looks like follows it here, too. */
    readonly slots: Readonly<Record<string, number>>;
  };
  /** Channel names; empty = the primary temperature. */
  readonly channels: readonly string[];
  /** Addresses of the figures that a plot of the kind `against` draws, the upright one first. */
  readonly of?: readonly string[];
  /** Temperatures as rise over ambient. */
  readonly rise: boolean;
  /** The author's title; else one is made from what is drawn. */
  readonly title?: string;
  readonly place: Place;
}

/** What a note asks to be shown as a table of figures. */
export interface TableRequest {
  /** Stable within the page, or the author's own. */
  readonly id: string;
  readonly runs: readonly { readonly alias: string; readonly run: string }[];
  /** Addresses without alias, as written, with the place of each. */
  readonly of: readonly { readonly address: string; readonly place: Place }[];
  /** The author's caption. */
  readonly title?: string;
  readonly place: Place;
}

/** An attribute of a directive as written; `place` is that of the first character of its value. */
export interface RequestAttribute {
  readonly value: string;
  readonly place: Place;
}

export type RequestAttributes = ReadonlyMap<string, RequestAttribute>;

/** A request, or what is wrong with it. */
export type Read<Request> = Request | { readonly problems: readonly Problem[] };

/**
 * Reads a plot's attributes: `kind`, and optionally `runs` (aliases; all of the note's when left out), `channels`, `rise`, `title`,
 * `id`. Of the kind `stability`: `attempts` (an alias; the note's only one when left out), `title`, `id`; of the kinds that draw a
 * comparison's figures likewise `comparison`. What the note names by alias, `place` that of the directive. Whether a run has a channel
 * is checked where figures are known.
 */
export function readPlotRequest(
  attributes: RequestAttributes,
  runs: ReadonlyMap<string, string>,
  place: Place,
  attempts: ReadonlyMap<string, string> = new Map(),
  comparisons: ReadonlyMap<string, string> = new Map(),
): Read<PlotRequest> {
  const problems: Problem[] = [];
  const kind = readKind(attributes, problems, place);
  if (kind === 'stability') return readOfOne(attributes, kind, ATTEMPTS, attempts, place);
  if (isComparedKind(kind)) return readOfOne(attributes, kind, COMPARISON, comparisons, place, slotsOf(runs));
  if (kind !== undefined) problems.push(...notFor(attributes, kind));
  const chosen = readRuns(attributes, runs, problems, place);
  const channels = wordsOf(attributes.get('channels')).map(({ word }) => word);
  const of = wordsOf(attributes.get('of')).map(({ word }) => word);
  const rise = readRise(attributes, problems);
  const id = readId(
    attributes,
    ['plot', kind ?? '', ...channels, ...of, ...(rise ? ['rise'] : []), ...chosen.map(({ alias }) => alias)],
    problems,
  );
  if (problems.length > 0 || kind === undefined) return { problems };
  return { kind, id, runs: slotted(chosen, runs), channels, ...(of.length > 0 ? { of } : {}), rise, ...titleOf(attributes), place };
}

/** What a plot can be told besides its kind, title and id. */
const ASKED = ['runs', 'attempts', 'comparison', 'channels', 'of', 'rise'] as const;

/** What each kind takes of it; the rest it has no use for, and says so. */
const TAKES: Readonly<Record<PlotKind, readonly (typeof ASKED)[number][]>> = {
  trace: ['runs', 'channels', 'rise'],
  'step-response': ['runs', 'channels', 'rise'],
  'power-by-phase': ['runs', 'channels'],
  against: ['runs', 'of'],
  thermal: ['runs'],
  stability: ['attempts'],
  scaling: ['comparison'],
  deltas: ['comparison'],
  scores: ['comparison'],
};

function isComparedKind(kind: PlotKind | undefined): kind is ComparedKind {
  return COMPARED_KINDS.some((each) => each === kind);
}

/** By run id. */
function slotsOf(runs: ReadonlyMap<string, string>): Readonly<Record<string, number>> {
  return Object.fromEntries([...runs.values()].map((run, slot) => [run, slot]));
}

/** What a plot without runs of its own draws: the attribute, and what the note's front matter calls it. */
const ATTEMPTS = { attribute: 'attempts', key: 'attempts' } as const;
const COMPARISON = { attribute: 'comparison', key: 'comparisons' } as const;

function readOfOne(
  attributes: RequestAttributes,
  kind: PlotKind,
  { attribute: name, key }: typeof ATTEMPTS | typeof COMPARISON,
  known: ReadonlyMap<string, string>,
  place: Place,
  slots: Readonly<Record<string, number>> = {},
): Read<PlotRequest> {
  const problems = notFor(attributes, kind);
  const attribute = attributes.get(name);
  const alias = attribute?.value.trim() ?? (known.size === 1 ? [...known.keys()][0]! : '');
  const id = known.get(alias);
  if (id === undefined) {
    const found = alias === '' ? `a plot of no ${name}` : `unknown alias \`${alias}\` of ${key}`;
    const expected = known.size > 0 ? `one alias of ${key}: ${oneOf([...known.keys()])}` : `a note that names \`${key}\``;
    problems.push(error('request-alias', attribute?.place ?? place, found, { expected, ...meant(alias, known.keys()) }));
  }
  const plot = readId(attributes, ['plot', kind, alias], problems);
  if (problems.length > 0 || id === undefined) return { problems };
  const drawn = name === 'attempts' ? { attempts: [{ alias, id }] } : { comparison: { alias, id, slots } };
  return { kind, id: plot, runs: [], ...drawn, channels: [], rise: false, ...titleOf(attributes), place };
}

/** Attributes that a kind of plot has no use for. */
function notFor(attributes: RequestAttributes, kind: PlotKind): Problem[] {
  return ASKED.flatMap((name) => {
    const attribute = attributes.get(name);
    if (!attribute || TAKES[kind].includes(name)) return [];
    return [error('request-attribute', attribute.place, `\`${name}\` of a plot of the kind \`${kind}\``, { remedy: 'remove it' })];
  });
}

/** Reads a table's attributes: `of` (addresses without alias), and optionally `runs`, `title`, `id`. */
export function readTableRequest(
  attributes: RequestAttributes,
  runs: ReadonlyMap<string, string>,
  place: Place,
): Read<TableRequest> {
  const problems: Problem[] = [];
  const chosen = readRuns(attributes, runs, problems, place);
  const of = wordsOf(attributes.get('of')).map((each) => ({ address: each.word, place: each.place }));
  const at = attributes.get('of')?.place ?? place;
  if (of.length === 0)
    problems.push(error('request-attribute', at, 'a table of nothing', { expected: '`of` with one figure or more' }));
  problems.push(...repeated(of.map(({ address, place }) => ({ word: address, place }))));
  const id = readId(attributes, ['table', ...of.map(({ address }) => address)], problems);
  return problems.length > 0 ? { problems } : { id, runs: chosen, of, ...titleOf(attributes), place };
}

interface Word {
  readonly word: string;
  readonly place: Place;
}

/** Words of a list, separated by blanks; a name in quotes (`score."aes 1t"`) keeps its blanks. */
function wordsOf(attribute: RequestAttribute | undefined): Word[] {
  const found = attribute?.value.matchAll(/(?:"[^"]*"|[^\s"])+|"/g) ?? [];
  return [...found].map((match) => ({
    word: match[0],
    place: within((attribute as RequestAttribute).place, match.index, match[0].length),
  }));
}

function within(place: Place, start: number, length: number): Place {
  const column = place.column + start;
  return { file: place.file, line: place.line, column, endLine: place.line, endColumn: column + length };
}

function readKind(attributes: RequestAttributes, problems: Problem[], place: Place): PlotKind | undefined {
  const kind = attributes.get('kind');
  const known = PLOT_KINDS.find((each) => each === kind?.value);
  if (known) return known;
  const found = kind ? `a plot of the kind \`${kind.value}\`` : 'a plot without `kind`';
  problems.push(
    error('request-kind', kind?.place ?? place, found, {
      expected: oneOf(PLOT_KINDS),
      ...(kind ? meant(kind.value, PLOT_KINDS) : {}),
    }),
  );
  return undefined;
}

function readRuns(
  attributes: RequestAttributes,
  runs: ReadonlyMap<string, string>,
  problems: Problem[],
  place: Place,
): TableRequest['runs'] {
  const attribute = attributes.get('runs');
  const words = attribute ? wordsOf(attribute) : [...runs.keys()].map((word) => ({ word, place }));
  if (words.length === 0) {
    const more = { expected: runs.size > 0 ? `aliases of the note: ${oneOf([...runs.keys()])}` : 'a note that names runs' };
    problems.push(error('request-alias', attribute?.place ?? place, 'no run', more));
  }
  problems.push(...repeated(words));
  return words.flatMap(({ word, place: at }) => {
    const run = runs.get(word);
    if (run !== undefined) return [{ alias: word, run }];
    problems.push(
      error('request-alias', at, `unknown alias \`${word}\``, { expected: oneOf([...runs.keys()]), ...meant(word, runs.keys()) }),
    );
    return [];
  });
}

/** Each with its place among the runs of the note. */
function slotted(chosen: TableRequest['runs'], runs: ReadonlyMap<string, string>): PlotRequest['runs'] {
  const aliases = [...runs.keys()];
  return chosen.map((each) => ({ ...each, slot: aliases.indexOf(each.alias) }));
}

function repeated(words: readonly Word[]): Problem[] {
  const twice = words.filter(({ word }, index) => words.findIndex((other) => other.word === word) < index);
  return twice.map(({ word, place }) =>
    error('repeated-item', place, `\`${word}\` a second time`, { remedy: 'remove one of them' }),
  );
}

function readRise(attributes: RequestAttributes, problems: Problem[]): boolean {
  const rise = attributes.get('rise');
  if (rise && rise.value !== 'true' && rise.value !== 'false') {
    problems.push(error('request-attribute', rise.place, `\`rise\` of \`${rise.value}\``, { expected: oneOf(['true', 'false']) }));
  }
  return rise?.value === 'true';
}

function readId(attributes: RequestAttributes, words: readonly string[], problems: Problem[]): string {
  const id = attributes.get('id');
  if (!id) return idFromWords(words.join(' '));
  if (!isId(id.value)) problems.push(error('bad-id', id.place, `the id \`${id.value}\``, { expected: ID_RULE }));
  return id.value;
}

function titleOf(attributes: RequestAttributes): { readonly title?: string } {
  const title = attributes.get('title')?.value.trim();
  return title ? { title } : {};
}
