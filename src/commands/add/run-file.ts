/** Composes content/runs/<id>.md for a new log, ready to edit. */
import { type UsedBit, usedBits } from '../../intake/cells/flag-bits.ts';
import type { Inspection } from '../../intake/inspect.ts';
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
  /** Load edges in seconds, where the log shows them. */
  readonly load: { readonly from: number; readonly to: number | null; readonly end: number } | null;
}

export interface RunFile {
  readonly text: string;
  /** Keys that the author still has to write. */
  readonly toWrite: readonly string[];
  /** What was taken because the project has only one of it, such as `setup open-bench`. */
  readonly taken: readonly string[];
}

/** The run's file. Lines that the author must complete stand as comments: an empty key would be an error of its own. */
export function composeRun(draft: Draft): RunFile {
  const toWrite: string[] = [];
  const ask = (key: string, hint: string) => {
    toWrite.push(key);
    return `# ${key}: ${hint}`;
  };
  const lines = [
    `title: ${quoted(draft.title)}`,
    ...setupLines(draft, ask),
    draft.inspection.time?.date === undefined
      ? ask('date', 'day of the test, such as 2026-03-14')
      : `date: ${draft.inspection.time.date}`,
    ...settingLines(draft, ask),
    ...logLines(draft, ask),
    ...channelLines(draft),
    ...phaseLines(draft),
  ];
  toWrite.push(...openChannels(draft.matches));
  return { text: `---\n${lines.join('\n')}\n---\n`, toWrite, taken: takenOf(draft) };
}

function settingLines({ setup }: Draft, ask: Ask): string[] {
  if (setup?.setting.has('clock')) return [];
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

function takenOf({ setup, project }: Draft): string[] {
  const [device, specimen] = [project.devices, project.specimens].map((ids) => (ids.length === 1 ? ids[0] : undefined));
  const asked = !setup && project.setups.length > 1;
  return [
    ...(setup ? [`setup ${setup.id}`] : []),
    ...(device !== undefined && setup?.device === undefined && !asked ? [`device ${device}`] : []),
    ...(specimen !== undefined && setup?.specimen === undefined ? [`specimen ${specimen}`] : []),
  ];
}

type Ask = (key: string, hint: string) => string;

function setupLines({ setup, project }: Draft, ask: Ask): string[] {
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

function logLines({ log, inspection, setup }: Draft, ask: Ask): string[] {
  const { time, timeCandidates } = inspection;
  if (time?.certain || !time || setup?.time.has('column')) return [`log: ${quoted(log)}`];
  const others = timeCandidates.filter((name) => name !== time.column);
  const unitUnknown = inspection.problems.some(({ rule }) => rule === 'time-unit-missing');
  return [
    'log:',
    `  file: ${quoted(log)}`,
    '  time:',
    `    column: ${quoted(time.column)}${others.length > 0 ? ` # or ${others.map(quoted).join(', ')}` : ''}`,
    ...(unitUnknown ? [`    ${ask('unit', 'ms, s, min or h: what the column counts')}`] : []),
  ];
}

function channelLines({ matches }: Draft): string[] {
  const complete = matches.channels.filter(isComplete);
  const rest = matches.channels.filter((channel) => !isComplete(channel));
  const lines = [
    ...complete.flatMap((channel) => channelBlock(channel)),
    ...matches.absent.map((name) => `  ${name}: none`),
    ...matches.open.map(
      ({ name, choices }) => `  # ${name}: none, if it was not logged; else give this name to ${choices.join(' or ')}`,
    ),
  ];
  const commented = rest.flatMap((channel) => [
    ...channelBlock(channel),
    `    unit: ${channel.column.suggestion ? `${channel.column.suggestion}, if the values look like it` : 'stated nowhere in the file'}`,
  ]);
  return [
    ...(lines.length > 0 ? ['channels:', ...lines] : ['# channels:']),
    ...(commented.length > 0
      ? ['  # No unit is stated for these: write it, and take the marks away.', ...commented.map((line) => `  #${line.slice(1)}`)]
      : []),
  ];
}

/** Whether the run passes with it: the file, the setup or the quantity itself says the unit. */
export function isComplete({ column, quantity, inherited }: Matched): boolean {
  return column.unit !== undefined || inherited?.unit !== undefined || quantity === 'throttle_flag';
}

function channelBlock(channel: Matched): string[] {
  const { name, column, quantity, inherited } = channel;
  return [
    `  ${name}:`,
    ...(inherited?.quantity === undefined ? [`    quantity: ${quantity}`] : []),
    ...(inherited?.column === undefined ? [`    column: ${quoted(column.column)}`] : []),
    ...(needsPlace(channel) ? ['    # at: wall, adapter output, board input, rail or battery'] : []),
    ...(!inherited?.explained && quantity === 'throttle_flag' ? bitLines(column) : []),
    ...(!inherited?.explained && quantity === 'clock' ? ['    # shows: requested or delivered'] : []),
  ];
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
  const idle = load.from > 0 ? [`  idle: 0 .. ${short(load.from)} s`] : [];
  const after = load.to === null || load.to >= load.end ? [] : [`  cool-down: ${short(load.to)} s ..`];
  const end = after.length > 0 ? `.. ${short(load.to!)} s` : 's ..';
  return ['# Found in the log: correct them to what you did.', 'phases:', ...idle, `  load: ${short(load.from)} ${end}`, ...after];
}

function short(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}

/** A YAML double-quoted scalar. */
function quoted(text: string): string {
  return JSON.stringify(text);
}
