/** Whether a comparison changes one thing: what differs between its runs besides the setting, in sentences for readers. */
import { AMBIENT_RULE, ambientsDiffer } from '../../figures/comparison/ambients.ts';
import { isPresent } from '../../figures/figure.ts';
import { duration, listed } from '../../figures/in-words.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Gathered, GatheredRun } from '../models/gathered.ts';
import { figuresOf } from '../models/gathered-figures.ts';
import type { ComparisonModel, ConditionRow } from '../results.ts';
import { AMBIENT, type Aspect, DEVICE, INSTRUMENT, LOAD, NEEDED, PLACE, SPECIMEN, STATED } from './compared-conditions.ts';
import { areOneValue } from './one-value.ts';

/** What differs, by a short name, and the sentences that say so. */
interface Difference {
  readonly what: string;
  readonly sentence: string;
}

/** Loads count as equally long within this share of the longer. */
const LOAD_SLACK = 0.05;

/** Judges all runs of a comparison together. */
export function fairnessOf({ runs, reference }: Gathered): ComparisonModel['fairness'] {
  const settings = settingsApart(runs);
  const devices = new Set(runs.map(({ device }) => device.id));
  const others = [
    ...worded(runs, DEVICE, ({ device }) => device.title),
    ...(devices.size === 1 ? worded(runs, SPECIMEN, ({ specimen }) => specimen) : []),
    ...ambient(runs),
    ...STATED.flatMap((aspect) => stated(runs, aspect)),
    ...loads(runs),
    ...channels(runs),
  ];
  return {
    lead: leadOf(settings, unique(others.map(({ what }) => what))),
    warnings: [...atOnce(runs, reference), ...others.map(({ sentence }) => sentence), ...unstated(runs)],
    rule: AMBIENT_RULE,
  };
}

function leadOf(settings: readonly string[], others: readonly string[]): string {
  const setting = settings.length === 0 ? 'The setting is the same in all runs' : `The setting differs in ${listed(settings)}`;
  if (others.length > 0) {
    const also = settings.length === 0 ? '; they differ in' : ', and the runs also differ in';
    const fair = settings.length === 0 && others.length === 1 ? '' : ' A fair comparison changes one thing.';
    return `${setting}${also} ${listed(others)}.${fair}`;
  }
  return settings.length === 0
    ? `${setting}, and so are all conditions that they state: what differs is how far such runs lie apart.`
    : `${setting}; as far as the runs state their conditions, nothing else does.`;
}

/** Several settings changed in one step: nothing tells them apart. */
function atOnce(runs: readonly GatheredRun[], reference: string): string[] {
  const base = runs.find(({ alias }) => alias === reference)!;
  const byKeys = grouped(
    runs.filter((run) => run !== base),
    (run) => listed(labelsOf([base, run]).filter((label) => textOf(base.setting, label) !== textOf(run.setting, label))),
  );
  return [...byKeys]
    .filter(([labels]) => labels.includes(' and '))
    .map(
      ([labels, aliases]) =>
        `${listed(aliases)} ${aliases.length === 1 ? 'differs' : 'differ'} from ${reference} in ${labels} at once: what each of them does cannot be told from these runs.`,
    );
}

function settingsApart(runs: readonly GatheredRun[]): string[] {
  return labelsOf(runs).filter((label) => new Set(runs.map(({ setting }) => textOf(setting, label))).size > 1);
}

function labelsOf(runs: readonly GatheredRun[]): string[] {
  return unique(runs.flatMap(({ setting }) => setting.map(({ label }) => label)));
}

/** Differences in what is said in words; what one run states and another does not counts as one. */
function worded(
  runs: readonly GatheredRun[],
  { label, effect }: Aspect,
  textOf: (run: GatheredRun) => string | undefined,
): Difference[] {
  const groups = [...grouped(runs, (run) => textOf(run) ?? '')].sort(([a], [b]) => Number(a === '') - Number(b === ''));
  if (groups.length < 2) return [];
  const said = groups.map(([text, aliases]) =>
    text === '' ? `not stated for ${listed(aliases)}` : `${setOff(text)} in ${listed(aliases)}`,
  );
  return [{ what: label, sentence: `${capital(label)}: ${said.join('; ')}. ${effect}` }];
}

/** A condition as the runs state it; values that no 95 % interval tells apart are one. */
function stated(runs: readonly GatheredRun[], aspect: Aspect): Difference[] {
  const texts = new Map(runs.map((run) => [run, conditionOf(run, aspect.label) ?? loggedInstead(run, aspect)]));
  if (aspect.measured === true && areOneValue(runs.map((run) => ({ run: run.alias, text: texts.get(run) })))) return [];
  return worded(runs, aspect, (run) => texts.get(run));
}

/** In quotation marks where the author's words would run into the sentence. */
function setOff(text: string): string {
  return /[,;:]| in /.test(text) ? `“${text}”` : text;
}

function ambient(runs: readonly GatheredRun[]): Difference[] {
  const known = runs.map((run) => ({ run, quantity: ambientOf(run) }));
  const had = known.filter((each): each is { run: GatheredRun; quantity: Quantity } => each.quantity !== null);
  const apart = had.some((a) => had.some((b) => ambientsDiffer(a.quantity, b.quantity)));
  if (!apart && (had.length === runs.length || had.length === 0)) return [];
  const text = new Map(known.map(({ run, quantity }) => [run, quantity === null ? undefined : ambientText(run, quantity)]));
  const missing = had.length < runs.length;
  return apart || missing ? worded(runs, AMBIENT, (run) => text.get(run)) : [];
}

/** Mean ambient of a run's load; null where it is neither measured nor stated. */
export function ambientOf(run: GatheredRun): Quantity | null {
  const figure = figuresOf(run.ambient).get('ambient');
  return figure !== undefined && isPresent(figure) ? figure.quantity : null;
}

/** Whether the ambient of a run's load was logged. */
export function isMeasured({ ambient }: GatheredRun): boolean {
  return String(figuresOf(ambient).get('ambient')?.of?.ambient).startsWith('measured');
}

/** "22.6 °C (measured)". */
function ambientText(run: GatheredRun, quantity: Quantity): string {
  return `${printQuantity(quantity).text} (${isMeasured(run) ? 'measured' : 'stated'})`;
}

function loads(runs: readonly GatheredRun[]): Difference[] {
  const lengths = runs.map(({ series }) => loadLength(series.phases));
  const known = lengths.filter((length) => length !== undefined);
  if (known.length === lengths.length && Math.min(...known) >= (1 - LOAD_SLACK) * Math.max(...known)) return [];
  if (known.length === 0) return [];
  const text = new Map(runs.map((run, index) => [run, durationOf(lengths[index])]));
  return worded(runs, LOAD, (run) => text.get(run));
}

function loadLength(phases: GatheredRun['series']['phases']): number | undefined {
  const load = phases.find(({ name }) => name === 'load');
  return load && load.to - load.from;
}

function durationOf(seconds: number | undefined): string | undefined {
  return seconds === undefined ? undefined : duration(seconds);
}

type Channel = GatheredRun['channels'][number];

/** One reading that several runs logged. */
interface Reading {
  /** "temperature", "temperature (board)". */
  readonly label: string;
  readonly of: (run: GatheredRun) => Channel | undefined;
}

/** Instruments and places of what several runs logged. */
function channels(runs: readonly GatheredRun[]): Difference[] {
  return [...primaries(runs), ...secondaries(runs)].flatMap(({ label, of }) => {
    const had = runs.filter((run) => of(run) !== undefined);
    return [
      ...worded(had, { label: `instrument of the ${label}`, effect: INSTRUMENT }, (run) => instrumentOf(run, of(run), had)),
      ...worded(had, { label: `place where the ${label} was measured`, effect: PLACE }, (run) => of(run)?.at || undefined),
    ];
  });
}

function primaries(runs: readonly GatheredRun[]): Reading[] {
  const quantities = unique(runs.flatMap((run) => run.channels.map(({ quantity }) => quantity)));
  return quantities.map((quantity) => ({ label: inWords(quantity), of: (run) => primary(run, quantity) }));
}

/** Other channels, which runs have in common by their name. */
function secondaries(runs: readonly GatheredRun[]): Reading[] {
  const others = runs.flatMap((run) => run.channels.filter((channel) => channel !== primary(run, channel.quantity)));
  const byName = new Map(others.map((channel) => [`${channel.quantity} ${channel.name}`, channel]));
  return [...byName.values()].map(({ name, quantity }) => ({
    label: `${inWords(quantity)} (${inWords(name)})`,
    of: (run) => run.channels.find((channel) => channel.name === name && channel.quantity === quantity),
  }));
}

function primary({ channels: all }: GatheredRun, quantity: string): Channel | undefined {
  return all.find((channel) => channel.quantity === quantity);
}

/** Its title; with the id where two of one title are among the runs. */
function instrumentOf(run: GatheredRun, channel: Channel | undefined, among: readonly GatheredRun[]): string | undefined {
  const used = run.instruments.find(({ id }) => id === channel?.instrument);
  const namesakes = among
    .flatMap(({ instruments }) => instruments)
    .filter((each) => each.title === used?.title && each.id !== used.id);
  return used && namesakes.length > 0 ? `${used.title} (${used.id})` : used?.title;
}

function inWords(name: string): string {
  return name.replaceAll('_', ' ');
}

/** Conditions that no run states: nothing tells whether they differ. */
function unstated(runs: readonly GatheredRun[]): string[] {
  const labels = NEEDED.filter((label) => runs.every((run) => conditionOf(run, label) === undefined));
  return labels.length === 0 ? [] : [`No run states its ${listed(labels)}: whether they differ cannot be told.`];
}

/** A supply that was logged need not be stated. */
function loggedInstead(run: GatheredRun, { label }: Aspect): string | undefined {
  return label === 'supply' && primary(run, 'voltage') ? 'logged' : undefined;
}

function conditionOf({ conditions }: GatheredRun, label: string): string | undefined {
  return textOf(conditions, label);
}

function textOf(rows: readonly ConditionRow[], label: string): string | undefined {
  return rows.find((row) => row.label === label)?.text;
}

/** Aliases by a text, in the order of the runs. */
function grouped(runs: readonly GatheredRun[], textOf: (run: GatheredRun) => string): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const run of runs) groups.set(textOf(run), [...(groups.get(textOf(run)) ?? []), run.alias]);
  return groups;
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
