/** Composes content/runs/<id>.md for a new log, ready to edit. */
import { type UsedBit, usedBits } from '../../intake/cells/flag-bits.ts';
import type { Inspection } from '../../intake/inspect.ts';
import { CLOCK_SHOWS } from '../../intake/log.ts';
import { columnRange } from '../../register/values/column-range.ts';
import type { Matched, Matches } from './match.ts';
import type { KnownSetup, Project } from './project.ts';

export interface Draft {
  readonly title: string;
  /** Path below data/. */
  readonly log: string;
  readonly inspection: Inspection;
  readonly setup: KnownSetup | undefined;
  readonly project: Project;
  readonly matches: Matches;
  /** The run's other logs, each by a name. */
  readonly others?: readonly OtherLog[];
  /** Name of the first log where there are others. */
  readonly name?: string;
  /** Columns without a unit that stand, as comments, in the setup. */
  readonly inSetup?: ReadonlySet<string>;
  /** Lines of the run's tables. */
  readonly tables?: readonly string[];
  /** Clock that a table states of the run's setting. */
  readonly clock?: string;
  /** Day of the test, where the author gave it. */
  readonly date?: string;
  /** Load edges in seconds, where the log shows them. */
  readonly load: { readonly from: number; readonly to: number | null; readonly end: number } | null;
}

export interface OtherLog {
  readonly name: string;
  /** Path below data/. */
  readonly log: string;
  readonly inspection: Inspection;
  readonly matches: Matches;
  /** Whether its clock and the first log's both tell date and zone. */
  readonly dated: boolean;
}

export interface RunFile {
  readonly text: string;
  /** Keys that the author still has to write. */
  readonly toWrite: readonly string[];
  /** What was taken because the project has only one of it, such as `setup open-bench`. */
  readonly taken: readonly string[];
}

/** Collects the keys that are left to the author, each with a comment in its place. */
function asking() {
  const toWrite: string[] = [];
  const ask = (key: string, hint: string) => {
    toWrite.push(key);
    return `# ${key}: ${hint}`;
  };
  return { toWrite, ask };
}

/** The run's file. Lines that the author must complete stand as comments: an empty key would be an error of its own. */
export function composeRun(draft: Draft): RunFile {
  const { toWrite, ask } = asking();
  const lines = [
    `title: ${quoted(draft.title)}`,
    ...setupLines(draft, ask),
    dateLine(draft, ask),
    ...settingLines(draft, ask),
    ...logLines(draft, ask),
    ...channelLines(draft),
    ...phaseLines(draft),
    ...(draft.tables ?? []),
  ];
  toWrite.push(
    ...openChannels(draft.matches),
    ...(draft.others ?? []).flatMap(({ matches }) => openChannels({ ...matches, open: [] })),
  );
  return { text: `---\n${lines.join('\n')}\n---\n`, toWrite, taken: takenOf(draft) };
}

/** The file of a run without a log: what a table tells of one of its settings. */
export function composeLogless(
  draft: Pick<Draft, 'title' | 'setup' | 'project' | 'clock' | 'date'> & { readonly tables: readonly string[] },
): RunFile {
  const { toWrite, ask } = asking();
  const lines = [
    `title: ${quoted(draft.title)}`,
    ...setupLines(draft, ask),
    dayLine(draft.date, ask),
    ...settingLines(draft, ask),
    'log: none',
    ...draft.tables,
  ];
  return { text: `---\n${lines.join('\n')}\n---\n`, toWrite, taken: takenOf(draft) };
}

function dateLine({ inspection, date, others = [] }: Draft, ask: Ask): string {
  const stated =
    date ?? [inspection, ...others.map((other) => other.inspection)].find(({ time }) => time?.date !== undefined)?.time?.date;
  return dayLine(stated, ask);
}

function dayLine(stated: string | undefined, ask: Ask): string {
  return stated === undefined ? ask('date', 'day of the test, such as 2026-03-14') : `date: ${stated}`;
}

function settingLines({ setup, clock }: Pick<Draft, 'setup' | 'clock'>, ask: Ask): string[] {
  if (setup?.setting.has('clock')) return [];
  if (clock !== undefined) return ['setting:', `  clock: ${clock}`];
  ask('setting.clock', '');
  return ['# setting:', '#   clock: the setting under test, such as 2.4 GHz'];
}

/** Channels of the setup without a column, and places of measurement that no one states. */
function openChannels({ channels, open }: Matches): string[] {
  const unplaced = channels.filter((channel) => needsPlace(channel) && isComplete(channel));
  return [...open.map(({ name }) => `channels.${name}`), ...unplaced.map(({ name }) => `channels.${name}.at`)];
}

function needsPlace({ quantity, inherited }: Matched): boolean {
  return inherited === undefined && ['current', 'voltage', 'power', 'energy'].includes(quantity);
}

function takenOf({ setup, project }: Pick<Draft, 'setup' | 'project'>): string[] {
  const [device, specimen] = [project.devices, project.specimens].map((ids) => (ids.length === 1 ? ids[0] : undefined));
  const asked = !setup && project.setups.length > 1;
  return [
    ...(setup ? [`setup ${setup.id}`] : []),
    ...(device !== undefined && setup?.device === undefined && !asked ? [`device ${device}`] : []),
    ...(specimen !== undefined && setup?.specimen === undefined ? [`specimen ${specimen}`] : []),
  ];
}

type Ask = (key: string, hint: string) => string;

function setupLines({ setup, project }: Pick<Draft, 'setup' | 'project'>, ask: Ask): string[] {
  if (!setup && project.setups.length > 1) {
    return [ask('setup', `one of ${project.setups.map(({ id }) => id).join(', ')}`), ...specimenLine(project, ask)];
  }
  if (setup) {
    const device = setup.device === undefined ? deviceLine(project, ask) : [];
    return [`setup: ${setup.id}`, ...device, ...(setup.specimen === undefined ? specimenLine(project, ask) : [])];
  }
  return [...deviceLine(project, ask), ...specimenLine(project, ask)];
}

function deviceLine({ devices }: Project, ask: Ask): string[] {
  if (devices.length === 1) return [`device: ${devices[0]}`];
  return [ask('device', devices.length > 0 ? `one of ${devices.join(', ')}` : 'its id; describe it in content/devices/<id>.md')];
}

function specimenLine({ specimens }: Project, ask: Ask): string[] {
  if (specimens.length === 1) return [`specimen: ${specimens[0]} # the only one so far`];
  return [
    ask(
      'specimen',
      specimens.length > 0 ? `one of ${specimens.join(', ')}, or a new alias` : 'an alias of its serial, such as no-1',
    ),
  ];
}

function logLines(draft: Draft, ask: Ask): string[] {
  const first = oneLog(draft, ask);
  const { others = [], name = 'log' } = draft;
  if (others.length === 0) return first;
  const named = (own: string, lines: readonly string[]) =>
    lines.length === 1
      ? [`  ${own}: ${lines[0]!.replace(/^log: /, '')}`]
      : [`  ${own}:`, ...lines.slice(1).map((line) => `  ${line}`)];
  return [
    'logs:',
    ...named(name, first),
    ...others.flatMap((other) => {
      const lines = oneLog({ ...draft, log: other.log, inspection: other.inspection }, ask);
      const whole = lines.length === 1 ? ['log:', `  file: ${quoted(other.log)}`] : lines;
      return named(
        other.name,
        other.dated
          ? lines
          : [...whole, '  offset: by load edge # or when its first row stands after that of the first log: starts: 37 ± 1 s'],
      );
    }),
  ];
}

function oneLog({ log, inspection, setup }: Draft, ask: Ask): string[] {
  const { time, timeCandidates, several } = inspection;
  const rows = several ? rowLines(several) : [];
  if (time?.certain || !time || setup?.time.has('column')) {
    return several ? ['log:', `  file: ${quoted(log)}`, ...rows] : [`log: ${quoted(log)}`];
  }
  const others = timeCandidates.filter((name) => name !== time.column);
  const unitUnknown = inspection.problems.some(({ rule }) => rule === 'time-unit-missing');
  const orderUnknown = inspection.problems.some(({ rule }) => rule === 'date-order-unknown');
  return [
    'log:',
    `  file: ${quoted(log)}`,
    ...rows,
    '  time:',
    `    column: ${quoted(time.column)}${others.length > 0 ? ` # or ${others.map(quoted).join(', ')}` : ''}`,
    ...(unitUnknown ? [`    ${ask('unit', 'ms, s, min or h: what the column counts')}`] : []),
    ...(orderUnknown ? [`    ${ask('date_order', 'day first or month first: no date of the log tells')}`] : []),
  ];
}

/** Rows of one device of several, the first of them; each of the others is another run. */
function rowLines({ column, values }: NonNullable<Inspection['several']>): string[] {
  const [first = '', ...others] = values;
  const more = others.slice(0, 10).map(quoted).join(', ');
  return [
    '  rows:',
    `    ${quoted(column)}: ${quoted(first)} # or ${more}${others.length > 10 ? ', …' : ''}, each in a run of its own`,
  ];
}

function channelLines(draft: Draft): string[] {
  const others = draft.others ?? [];
  const columns = (matches: Matches) => matches.channels.map(({ column }) => column.column);
  const elsewhere = (own: Matches) =>
    [draft.matches, ...others.map(({ matches }) => matches)].filter((each) => each !== own).flatMap(columns);
  const inLog = (matches: Matches, name: string) => {
    const twice = new Set(others.length === 0 ? [] : elsewhere(matches));
    return {
      ...matches,
      channels: matches.channels.map((channel) => (twice.has(channel.column.column) ? { ...channel, log: name } : channel)),
    };
  };
  const logs = [inLog(draft.matches, draft.name ?? 'log'), ...others.map(({ matches, name }) => inLog(matches, name))];
  // A channel of the setup is absent where none of the logs has it.
  const found = new Set(logs.flatMap(({ channels }) => channels.map(({ name }) => name)));
  const channels = logs
    .flatMap((each) => each.channels)
    .filter((channel) => isComplete(channel) || !draft.inSetup?.has(channel.column.column));
  return linesOf({
    channels,
    absent: draft.matches.absent.filter((name) => !found.has(name)),
    open: draft.matches.open.filter(({ name }) => !found.has(name)),
  });
}

/** Channels of several runs, for the setup that they share. */
export function sharedChannelLines(matches: Matches): string[] {
  return linesOf(matches);
}

function linesOf(matches: Matches): string[] {
  const complete = matches.channels.filter(isComplete);
  const rest = matches.channels.filter((channel) => !isComplete(channel));
  const lines = [
    ...complete.flatMap((channel) => withoutEmpty(channelBlock(channel))),
    ...matches.absent.map((name) => `  ${name}: none`),
    ...matches.open.map(
      ({ name, choices }) => `  # ${name}: none, if it was not logged; else give this name to ${choices.join(' or ')}`,
    ),
  ];
  const ranges = rangesIn(rest);
  const inRanges = new Set(ranges.flatMap(({ channels }) => channels));
  const single = rest.filter((channel) => !inRanges.has(channel));
  const ranged = ranges.map(
    ({ key, quantity, suggestion }) =>
      `  ${key}: ${quantity === 'other' ? 'temperature' : quantity}, ${suggestion ?? '°C'} # if that is what they are`,
  );
  const commented = [
    ...ranged,
    ...single.flatMap((channel) => [
      ...channelBlock(channel),
      `    unit: ${channel.column.suggestion ? `${channel.column.suggestion} # if the values look like it` : '°C # or what it is: stated nowhere in the file'}`,
    ]),
  ];
  return [
    ...(lines.some((line) => !/^\s*#/.test(line))
      ? ['channels:', ...lines]
      : matches.channels.every(saidInFull)
        ? lines
        : ['# channels:', ...lines]),
    ...(commented.length > 0
      ? ['  # No unit is stated for these: write it, and take the marks away.', ...commented.map((line) => `  #${line.slice(1)}`)]
      : []),
  ];
}

/** Nothing of a channel of which the setup says everything. */
function withoutEmpty(block: readonly string[]): readonly string[] {
  return block.slice(1).every((line) => /^\s*#/.test(line)) ? [] : block;
}

interface ColumnRange {
  readonly key: string;
  readonly channels: readonly Matched[];
  readonly quantity: string;
  readonly suggestion?: string;
}

/** Fewer columns are declared one by one. */
const FEWEST_IN_RANGE = 3;

/** Columns that are named alike and numbered in a row: one line declares them all. */
function rangesIn(channels: readonly Matched[]): ColumnRange[] {
  const ranges: ColumnRange[] = [];
  for (let from = 0; from < channels.length; from++) {
    let to = channels.length - 1;
    const spread = () => columnRange(`${channels[from]!.column.column} .. ${channels[to]!.column.column}`);
    const alike = () => {
      const columns = spread();
      return columns?.length === to - from + 1 && columns.every((column, k) => column === channels[from + k]!.column.column);
    };
    while (to >= from + FEWEST_IN_RANGE - 1 && !(channels[to]!.quantity === channels[from]!.quantity && alike())) to--;
    if (to < from + FEWEST_IN_RANGE - 1 || channels[from]!.inherited) continue;
    const { quantity, column } = channels[from]!;
    const key = `${column.column} .. ${channels[to]!.column.column}`;
    const some = channels.slice(from, to + 1);
    ranges.push({ key, channels: some, quantity, ...(column.suggestion === undefined ? {} : { suggestion: column.suggestion }) });
    from = to;
  }
  return ranges;
}

/** Whether the run passes with it: the file, the setup or the quantity itself says the unit. */
export function isComplete({ column, quantity, inherited }: Matched): boolean {
  return column.unit !== undefined || inherited?.unit !== undefined || quantity === 'throttle_flag';
}

/** Whether the setup says all of a channel, so that the run need not. */
function saidInFull({ inherited, column }: Matched): boolean {
  return (
    inherited?.quantity !== undefined &&
    inherited.column !== undefined &&
    (inherited.unit !== undefined || column.unit !== undefined)
  );
}

function channelBlock(channel: Matched): string[] {
  const { name, column, quantity, inherited } = channel;
  return [
    `  ${name}:`,
    ...(inherited?.quantity === undefined ? [`    quantity: ${quantity}`] : []),
    ...(inherited?.column === undefined ? [`    column: ${quoted(column.column)}`] : []),
    ...(channel.log === undefined ? [] : [`    log: ${channel.log}`]),
    ...(needsPlace(channel) ? ['    # at: wall, adapter output, board input, rail or battery'] : []),
    ...(!inherited?.explained && quantity === 'throttle_flag' ? bitLines(column) : []),
    ...(!inherited?.explained && quantity === 'clock' ? [showsLine(column.column)] : []),
  ];
}

/** What a clock shows is taken from its column's name where that says it. */
function showsLine(column: string): string {
  const said = CLOCK_SHOWS.find((word) =>
    column
      .toLowerCase()
      .split(/[^a-z]+/)
      .includes(word),
  );
  return said === undefined ? '    # shows: requested or delivered' : `    shows: ${said}`;
}

/** Bits for the author to name: which of them mean what, the file cannot say. */
function bitLines({ values }: Matched['column']): string[] {
  const bits = usedBits(values);
  if (bits.every(({ number }) => number === 0)) return [];
  const listed = (key: string, some: readonly UsedBit[], hint: string) =>
    some.length === 0 ? [] : [`    # ${key}: # ${hint}`, ...some.map(({ number }) => `    #   ${number}: what it tells`)];
  return [
    ...listed(
      'bits',
      bits.filter(({ goesOff }) => goesOff),
      'come and go in this log; keep those that tell of throttling now',
    ),
    ...listed(
      'sticky',
      bits.filter(({ goesOff }) => !goesOff),
      'never went off again; those that stay set until the next boot',
    ),
  ];
}

function phaseLines({ setup, load }: Draft): string[] {
  if (setup?.phases) return [];
  if (!load) return ['phases: auto'];
  const idle = Number(short(load.from)) > 0 ? [`  idle: 0 .. ${short(load.from)} s`] : [];
  const after = load.to === null || load.to >= load.end ? [] : [`  cool-down: ${short(load.to)} s ..`];
  const end = after.length > 0 ? `.. ${short(load.to!)} s` : 's ..';
  return ['# Found in the log: correct them to what you did.', 'phases:', ...idle, `  load: ${short(load.from)} ${end}`, ...after];
}

function short(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}

/** A YAML double-quoted scalar. */
export function quoted(text: string): string {
  return JSON.stringify(text);
}
