/** A run as stated, and the setup, device and instruments that it names -> the run in full. */
import type { ChannelDeclaration } from '../../intake/log.ts';
import type { StatedRun } from '../files/runs.ts';
import type { Setup } from '../files/setups.ts';
import type { Device, Instrument, Run, RunLog } from '../register.ts';
import type { StatedLog } from '../sections/log.ts';
import { placedReadings } from '../sections/readings.ts';
import { checkSurface } from '../sections/surface.ts';
import { inheritTable, tellNoFile } from '../sections/table.ts';
import { stepOf } from '../values/channel-step.ts';
import { exampleOf } from '../values/examples.ts';
import type { Index } from '../values/index-of.ts';
import { meant, oneOf } from '../values/names.ts';
import type { Inherited, Shared, StatedChannel } from '../values/stated-value.ts';
import { placeFinder } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { checkChannels, tellOverridden } from './check-channels.ts';
import { inherit } from './inherit.ts';
import { conditionsOf, contextOf, factPlacesOf, factsOf, type Stated } from './run-facts.ts';

export interface Named {
  readonly devices: Index<Device>;
  readonly instruments: Index<Instrument>;
  readonly setups: Index<Setup>;
}

/** Reports what a setup or run names and no file holds. */
export function checkNames(shared: Shared, { devices, instruments }: Named, report: Report): void {
  if (shared.device) devices.find(shared.device, report);
  for (const reference of shared.instruments?.value ?? []) instruments.find(reference, report);
}

/** The run in full; undefined where it has errors, or rests on a file that has. */
export function resolveRun(stated: StatedRun, named: Named, report: Report): Run | undefined {
  return report.whole(() => {
    const setup = stated.setup && named.setups.find(stated.setup, report);
    if (stated.setup && !setup) return undefined;
    const inherited = inherit(setup?.shared, stated.shared);
    tellMissing(inherited, stated, report);
    if (setup) {
      tellAbsent(stated, setup, report);
      tellOverridden(stated.shared.channels, setup.shared.channels, report);
    }
    checkChannels(inherited, report);
    const tables = tablesOf(stated, setup, report);
    checkSurface(tables.surface, inherited, report);
    return complete({ ...stated, ...tables }, setup, inherited, named, report);
  });
}

/** What a run needs and its setup may state in its place. */
function tellMissing(inherited: Inherited, stated: StatedRun, report: Report): void {
  const missing = [
    ...(inherited.device ? [] : ['device']),
    ...(inherited.specimen === undefined ? ['specimen'] : []),
    ...(inherited.channels.size > 0 || stated.logs.length === 0 ? [] : ['channels']),
  ];
  for (const key of missing) {
    report.error('missing-key', stated.source.start, `a run needs the key \`${key}\`, in itself or in its setup`, {
      remedy: `write for instance \`${exampleOf(key)}\``,
    });
  }
}

/** What a run takes from its setup or takes away, and cannot. */
function tellAbsent({ shared }: StatedRun, setup: Setup, report: Report): void {
  const channels = [...setup.shared.channels.keys()];
  for (const { value, place } of shared.without) {
    if (channels.includes(value)) continue;
    report.error('no-channel', place, `the setup has no channel \`${value}\` to take away`, {
      ...(channels.length > 0 ? { expected: oneOf(channels) } : {}),
      ...meant(value, channels),
    });
  }
  const other = shared.device && setup.shared.device && shared.device.value !== setup.shared.device.value;
  if (other && shared.specimen === undefined && setup.shared.specimen !== undefined) {
    report.error(
      'missing-key',
      shared.device!.place,
      `specimen \`${setup.shared.specimen}\` of the setup is one of \`${setup.shared.device!.value}\``,
      {
        expected: 'a run of another device to state its own `specimen`',
        remedy: `write for instance \`${exampleOf('specimen')}\``,
      },
    );
  }
}

function complete(
  stated: StatedRun,
  setup: Setup | undefined,
  inherited: Inherited,
  named: Named,
  report: Report,
): Run | undefined {
  const { id } = stated.item;
  const device = inherited.device && named.devices.find(inherited.device, report);
  const references = inherited.instruments?.value ?? [];
  const instruments = references.map((reference) => named.instruments.find(reference, report)?.facts);
  // A setup's channels are of logs.
  const channels = stated.logs.length === 0 ? [] : [...inherited.channels.values()].map(declarationOf);
  const readings = placedReadings(stated.readings, { ...inherited, channels: [...inherited.channels.keys()] }, report);
  const logs = stated.logs.map((log) => logOf(log, stated, setup, inherited, channels));
  if (!device || inherited.specimen === undefined || !allThere(logs)) return undefined;
  if (!allThere(instruments) || !allThere(channels)) return undefined;
  tellUnknownChannels(stated, channels, report);
  tellUnknownLogs(stated, channels, report);
  const facts: Stated = {
    id,
    device,
    specimen: inherited.specimen,
    inherited,
    conditions: conditionsOf(inherited.conditions, id),
    setting: conditionsOf(inherited.setting, id, 'setting.'),
    instruments,
    readings,
  };
  const placeOf = placeFinder(stated.item.file, stated.source.places, ...(setup ? [setup.source.places] : []));
  const addresses = factsOf(facts);
  return {
    ...stated.item,
    placeOf,
    ...(stated.setup ? { setup: stated.setup.value } : {}),
    device: device.id,
    specimen: inherited.specimen,
    date: stated.date,
    conditions: facts.conditions,
    setting: facts.setting,
    instruments: references.map((reference) => reference.value),
    logs,
    channels,
    phases: inherited.phases?.value ?? [],
    ...(inherited.steady === undefined ? {} : { steady: inherited.steady }),
    ...(stated.scores?.file === undefined ? {} : { scores: stated.scores.file }),
    ...(stated.surface?.file === undefined ? {} : { surface: stated.surface.file }),
    ...(stated.surface?.image === undefined ? {} : { surfaceImage: stated.surface.image }),
    ...(stated.surface?.photographs === undefined ? {} : { photographs: stated.surface.photographs }),
    ...mappingsOf(stated),
    ...(stated.surface?.instrument ? { surfaceInstrument: stated.surface.instrument.value } : {}),
    ...(inherited.licence ? { licence: inherited.licence } : {}),
    context: contextOf(facts),
    facts: addresses,
    factPlaces: factPlacesOf(addresses.keys(), facts, placeOf),
  };
}

/** The run's tables, with what its setup says of them. */
function tablesOf({ scores, surface }: StatedRun, setup: Setup | undefined, report: Report): Pick<StatedRun, 'scores' | 'surface'> {
  const made = { scores: inheritTable(setup?.tables.scores, scores), surface: inheritTable(setup?.tables.surface, surface) };
  for (const key of ['scores', 'surface'] as const) {
    const table = made[key];
    if (table && table.file === undefined) tellNoFile(table, key, report);
  }
  return { ...(made.scores ? { scores: made.scores } : {}), ...(made.surface ? { surface: made.surface } : {}) };
}

function mappingsOf(tables: Pick<StatedRun, 'scores' | 'surface'>): Pick<Run, 'mappings'> {
  const own = (['scores', 'surface'] as const).flatMap((key) => {
    const mapping = tables[key]?.mapping ?? {};
    return Object.keys(mapping).length > 0 ? [[key, mapping] as const] : [];
  });
  return own.length > 0 ? { mappings: Object.fromEntries(own) } : {};
}

/** Names of channels under `known` that the run has not. */
function tellUnknownChannels({ shared }: StatedRun, channels: readonly ChannelDeclaration[], report: Report): void {
  const names = channels.map(({ name }) => name);
  for (const entry of shared.known) {
    if (!('channel' in entry) || names.includes(entry.channel)) continue;
    report.error('no-channel', entry.place, `\`known\` names the channel \`${entry.channel}\`, which the run has not`, {
      ...(names.length > 0 ? { expected: oneOf(names) } : {}),
      ...meant(entry.channel, names),
    });
  }
}

/** Logs that channels, repairs and `known` name and the run has not. */
function tellUnknownLogs({ logs, repairs, shared }: StatedRun, channels: readonly ChannelDeclaration[], report: Report): void {
  const names = logs.map(({ name }) => name);
  const named = [...repairs, ...shared.known, ...channels].filter(({ log }) => log !== undefined && !names.includes(log));
  for (const { log, place } of named) {
    const has = names.length > 1 ? oneOf(names) : 'a run with several logs under `logs`; this one has a single log';
    report.error('bad-logs', place, `the log \`${log}\` is named, which the run has not`, { expected: has, ...meant(log!, names) });
  }
}

/** One log, with what its setup says of it; undefined where its file cannot be told. */
function logOf(
  log: StatedLog,
  stated: StatedRun,
  setup: Setup | undefined,
  { phases, known }: Inherited,
  channels: readonly (ChannelDeclaration | undefined)[],
): RunLog | undefined {
  const { name, file } = log;
  if (file === undefined) return undefined;
  const declared = phases === undefined || phases.value === 'auto' ? [] : phases.value;
  const named = setup?.logs.get(name);
  const time = { ...setup?.log.time, ...named?.time, ...log.time };
  const offset = log.offset ?? named?.offset;
  const isFirst = log === stated.logs[0];
  const own = ({ log: of }: { readonly log?: string }) => (of === undefined ? isFirst : of === name);
  const knownOfIt = known.filter((entry) => ('fromLine' in entry ? own(entry) : 'channel' in entry || isFirst));
  return {
    name,
    declaration: {
      file,
      ...(Object.keys(time).length > 0 ? { time } : {}),
      channels: channels.filter((each): each is ChannelDeclaration => each !== undefined && (each.log ?? name) === name),
      repairs: stated.repairs.filter(own),
      ...(log.lastLine === undefined ? {} : { lastLine: log.lastLine }),
      ...(log.rows === undefined ? {} : { rows: log.rows }),
      ...(knownOfIt.length > 0 ? { known: knownOfIt } : {}),
      ...(isFirst && declared.length > 0 ? { phaseStarts: declared.map(({ name, from, place }) => ({ name, from, place })) } : {}),
      place: log.place,
    },
    ...(offset && !isFirst ? { offset } : {}),
    sharing: [log.sharing, named?.sharing, setup?.log.sharing].find((each) => each && Object.keys(each).length > 0) ?? {},
  };
}

function declarationOf({
  name,
  place,
  label,
  quantity,
  column,
  unit,
  unit_reason,
  at,
  instrument,
  missing,
  bits,
  sticky,
  shows,
  step,
  log,
}: StatedChannel): ChannelDeclaration | undefined {
  if (!quantity || !column) return undefined;
  return {
    name,
    ...(label ? { label: label.value } : {}),
    quantity: quantity.value,
    column: column.value,
    ...(unit ? { unit: unit.value } : {}),
    ...(unit_reason ? { unitReason: unit_reason.value } : {}),
    ...(at ? { at: at.value } : {}),
    ...(instrument ? { instrument: instrument.value } : {}),
    ...(missing ? { missing: missing.value } : {}),
    ...(bits ? { bits: bits.value } : {}),
    ...(sticky ? { sticky: sticky.value } : {}),
    ...(shows ? { shows: shows.value } : {}),
    ...(step ? stepOf(step.text, quantity.value) : {}),
    ...(log ? { log: log.value } : {}),
    place,
  };
}

function allThere<T>(items: readonly (T | undefined)[]): items is readonly T[] {
  return !items.includes(undefined);
}
