/** Which of several files probably belong to one run: by the time that their logs cover, and by their names. */
import { stemOf } from './ending.ts';

export interface NamedFile {
  /** Below data/. */
  readonly path: string;
  /** Of a log that tells them: instants of its first and last row, s. */
  readonly span?: readonly [number, number];
  /** Of a table of several settings: the values that tell them apart. */
  readonly settings?: readonly string[];
}

/** Logs of one run, none where only tables have its setting, and its tables; `setting` is the one of the table's that the run is of. */
export interface Group {
  readonly logs: readonly string[];
  readonly tables: readonly { readonly path: string; readonly setting?: string }[];
  readonly why: string;
}

export interface Grouping {
  readonly groups: readonly Group[];
  /** Tables of which no run can be told. */
  readonly left: readonly string[];
}

/** Words in names of files that say what a file is, not of which run. */
const ROLES = new Set(
  'log logs logger logged soak temps temp temperature temperatures power meter wall current volts amps sensor sensors device board room score scores bench benchmark benchmarks result results surface spot spots camera thermal attempts tried readings raw data export csv txt test'.split(
    ' ',
  ),
);

function words(path: string): string[] {
  return wordsIn(stemOf(path));
}

/** Words and numbers; a number with a decimal point is one. */
function wordsIn(text: string): string[] {
  return text.toLowerCase().match(/\p{L}+|\p{N}+(?:\.\p{N}+)*/gu) ?? [];
}

/** Ways to write a setting in a file's name: its words; of a clock, its number in MHz and in GHz. */
function spellings(setting: string): string[][] {
  const [, digits, unit = ''] = /^(\d+(?:\.\d+)?)\s*([MG]Hz)?$/i.exec(setting.trim()) ?? [];
  // A column may name the log itself: "soak-fast.csv".
  if (digits === undefined) return [wordsIn(/\.(?:csv|tsv|txt|log)$/i.test(setting.trim()) ? stemOf(setting.trim()) : setting)];
  const value = Number(digits);
  const giga = unit === '' ? value < 20 && digits.includes('.') : /^g/i.test(unit);
  const mega = unit === '' ? value >= 100 : /^m/i.test(unit);
  const other = giga ? [value * 1000] : mega ? [value / 1000] : [];
  return [[digits], ...[value, ...other].map((each) => [String(Number(each.toPrecision(12)))])];
}

/** How many words of a file's name are the setting, as one sequence; 0 where it is not there. */
function wordsThatFit(path: string, setting: string): number {
  const own = words(path);
  const there = (wanted: readonly string[]) => own.some((_, at) => wanted.every((word, k) => own[at + k] === word));
  return Math.max(0, ...spellings(setting).map((wanted) => (wanted.length > 0 && there(wanted) ? wanted.length : 0)));
}

/** The setting of each set of logs: the one that its names state most fully, where no other set states it and no other setting fits as well. */
function settingsOf(sets: readonly (readonly NamedFile[])[], settings: readonly string[]): (readonly [number, string])[] {
  const fits = sets.map((set) => settings.map((setting) => Math.max(...set.map(({ path }) => wordsThatFit(path, setting)))));
  const chosen = fits.map((own) => {
    const most = Math.max(0, ...own);
    const best = own.flatMap((each, k) => (most > 0 && each === most ? [settings[k]!] : []));
    return best.length === 1 ? best[0] : undefined;
  });
  return chosen.flatMap((setting, at) =>
    setting !== undefined && chosen.filter((other) => other === setting).length === 1 ? [[at, setting] as const] : [],
  );
}

/** What a file's name says of its run: its words less those that name a kind of file, and less those that all names have. */
function keysOf(files: readonly NamedFile[]): ReadonlyMap<string, readonly string[]> {
  const all = files.map(({ path }) => [path, words(path)] as const);
  const common = (word: string) => all.length > 1 && all.every(([, own]) => own.includes(word));
  return new Map(all.map(([path, own]) => [path, own.filter((word) => !ROLES.has(word) && !common(word))]));
}

/** Proposes runs. @param apart - each log is a run of its own, whatever it looks like. */
export function groupFiles(
  logs: readonly NamedFile[],
  tables: readonly NamedFile[],
  choice: 'proposed' | 'apart' | 'together' = 'proposed',
): Grouping {
  const keys = keysOf([...logs, ...tables]);
  const keyOf = ({ path }: NamedFile) => keys.get(path)!.join(' ');
  const sets: NamedFile[][] = [];
  for (const log of logs) {
    const own =
      choice === 'apart' ? undefined : sets.find((set) => choice === 'together' || set.some((other) => belong(log, other, keyOf)));
    if (own) own.push(log);
    else sets.push([log]);
  }
  const groups = sets.map((set) => ({
    logs: set.map(({ path }) => path),
    tables: [] as { path: string; setting?: string }[],
    why: whyOf(set, choice),
  }));
  const left: string[] = [];
  const loose = new Map<string, { path: string; setting?: string }[]>();
  for (const table of tables) {
    const key = keyOf(table);
    const named = sets.flatMap((set, at) => (key !== '' && set.some((log) => keyOf(log) === key) ? [at] : []));
    const bySetting = settingsOf(sets, table.settings ?? []);
    if (bySetting.length > 0) {
      for (const [at, setting] of bySetting) groups[at]!.tables.push({ path: table.path, setting });
      for (const setting of withoutLogs(table.settings ?? [], bySetting, sets)) {
        const own = loose.get(setting) ?? [];
        loose.set(setting, [...own, { path: table.path, setting }]);
      }
    } else if (named.length === 1) groups[named[0]!]!.tables.push({ path: table.path });
    else if (groups.length === 1) groups[0]!.tables.push({ path: table.path });
    else left.push(table.path);
  }
  const alone = [...loose].map(([setting, own]) => ({ logs: [], tables: own, why: `no log has ${setting} in its name` }));
  return { groups: [...groups, ...alone], left };
}

/** The settings of a table that no log names at all; where a log might be of one of them, nothing is said of it. */
function withoutLogs(
  settings: readonly string[],
  taken: readonly (readonly [number, string])[],
  sets: readonly (readonly NamedFile[])[],
): readonly string[] {
  const told = new Set(taken.map(([at]) => at));
  const open = sets.some((_, at) => !told.has(at));
  return open ? [] : settings.filter((setting) => !taken.some(([, other]) => other === setting));
}

/** Logs that cover the same time; or, where that cannot be told, have the same name but for what kind of file they are. */
function belong(a: NamedFile, b: NamedFile, keyOf: (file: NamedFile) => string): boolean {
  if (a.span && b.span) {
    const shared = Math.min(a.span[1], b.span[1]) - Math.max(a.span[0], b.span[0]);
    return shared > 0 && shared * 2 >= Math.min(a.span[1] - a.span[0], b.span[1] - b.span[0]);
  }
  return keyOf(a) !== '' && keyOf(a) === keyOf(b);
}

function whyOf(set: readonly NamedFile[], choice: string): string {
  if (set.length === 1) return '';
  if (choice === 'together') return 'as you chose';
  return set.every(({ span }) => span) ? 'they cover the same time' : 'by their names';
}
