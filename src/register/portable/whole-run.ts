/** A run's declaration that needs no setup: what its setup says of it stands in it, and nothing of what the setup says of others. */
import { mapUnder, type Plain, type PlainFile, type PlainMap } from './plain-values.ts';

/** Keys that a run may take from its setup whole. */
export const WHOLE = ['device', 'specimen', 'instruments', 'phases', 'steady', 'licence'] as const;
/** Keys that it takes from it key by key. */
export const BY_KEY = ['conditions', 'setting'] as const;

/** Tables of a run, of which its setup may say how they are read. */
const TABLES = ['scores', 'surface'] as const;
/** Keys of a table that a run lays over its setup's key by key. */
const OF_TABLE = ['columns', 'words', 'every_row', 'units', 'tests'];

/** The same run without its setup, by the rules of inherit.ts. */
export function wholeRun(run: PlainFile, setup: PlainFile | undefined): PlainFile {
  if (!setup) return run;
  const keys = new Map(run.keys);
  keys.delete('setup');
  for (const key of WHOLE) {
    const value = run.keys.get(key) ?? setup.keys.get(key);
    if (value !== undefined) keys.set(key, value);
  }
  for (const key of BY_KEY) {
    const merged = new Map([...mapUnder(setup.keys, key), ...mapUnder(run.keys, key)]);
    if (merged.size > 0) keys.set(key, merged);
  }
  for (const key of TABLES) {
    const own = run.keys.get(key);
    if (own !== undefined) keys.set(key, mergedTable(own, setup.keys.get(key)));
  }
  const channels = mergedChannels(mapUnder(setup.keys, 'channels'), mapUnder(run.keys, 'channels'));
  if (channels.size > 0) keys.set('channels', channels);
  const known = [...listUnder(run.keys, 'known'), ...listUnder(setup.keys, 'known').flatMap((each) => knownOf(each, channels))];
  if (known.length > 0) keys.set('known', known);
  const shared = mapUnder(setup.keys, 'log');
  const logs = mapUnder(run.keys, 'logs');
  const named = mapUnder(setup.keys, 'logs');
  if (logs.size > 0)
    keys.set('logs', new Map([...logs].map(([name, log]) => [name, severalLog(log, mapUnder(named, name), shared)])));
  else if (run.keys.get('log') !== 'none') keys.set('log', mergedLog(run.keys.get('log'), shared));
  return { ...run, keys };
}

/** As `inheritTable` lays the one over the other. */
function mergedTable(own: Plain, shared: Plain | undefined): Plain {
  if (!(shared instanceof Map)) return own;
  const said: PlainMap = own instanceof Map ? own : new Map([['file', own]]);
  const merged = OF_TABLE.flatMap((key) => {
    const both = new Map([...mapUnder(shared, key), ...mapUnder(said, key)]);
    return both.size > 0 ? [[key, both] as const] : [];
  });
  return new Map<string, Plain>([...shared, ...said, ...merged]);
}

function listUnder(keys: PlainMap, key: string): readonly Plain[] {
  const value = keys.get(key);
  return Array.isArray(value) ? value : [];
}

/** What a setup knows of channels that this run has, and of phases. */
function knownOf(entry: Plain, channels: PlainMap): Plain[] {
  if (!(entry instanceof Map) || entry.has('phase')) return [entry];
  const stated: Plain = entry.get('channels') ?? entry.get('channel') ?? [];
  const names = (typeof stated === 'string' ? [stated] : [...(stated as readonly Plain[])]).filter((name) =>
    channels.has(String(name)),
  );
  const reason = entry.get('reason') ?? '';
  return names.length === 0
    ? []
    : [
        new Map<string, Plain>([
          ['channels', names],
          ['reason', reason],
        ]),
      ];
}

/** What says how the clock of a log stands to that of the first. */
const CLOCK_KEYS = ['offset', 'starts'];

/** One of several logs: its own word, that of the setup for its name, that for every log. */
function severalLog(log: Plain, named: PlainMap, shared: PlainMap): PlainMap {
  const own = mergedLog(log, named);
  const stated = CLOCK_KEYS.some((key) => own.has(key));
  const clock = CLOCK_KEYS.flatMap((key) => (stated || !named.has(key) ? [] : [[key, named.get(key) as Plain] as const]));
  return mergedLog(new Map([...own, ...clock]), shared);
}

function mergedChannels(setup: PlainMap, run: PlainMap): PlainMap {
  const merged = new Map(setup);
  for (const [name, own] of run) {
    if (own === 'none') merged.delete(name);
    else merged.set(name, new Map([...mapUnder(merged, name), ...mapUnder(run, name)]));
  }
  return merged;
}

/** Only a run says how its log goes out where it says anything of that. */
function mergedLog(log: Plain | undefined, shared: PlainMap): PlainMap {
  const own: PlainMap = log instanceof Map ? log : new Map(log === undefined ? [] : [['file', log]]);
  const time = new Map([...mapUnder(shared, 'time'), ...mapUnder(own, 'time')]);
  const share = shared.get('share');
  const says = ['share', 'redacted', 'elsewhere'].some((key) => own.has(key));
  return new Map([
    ...own,
    ...(time.size > 0 ? [['time', time] as const] : []),
    ...(share === undefined || says ? [] : [['share', share] as const]),
  ]);
}
