/** What a site may say by accident of its author's machine, network and place. */

import { kindOf } from '../../pictures/kind.ts';
import { leftovers } from '../../pictures/leftovers.ts';
import { error, type Problem, warning } from '../../problem.ts';
import { contentsOf } from './contents.ts';
import { placeIn, type SiteFile } from './site-files.ts';

/** What is looked for. */
interface Sign {
  readonly what: string;
  /** Its first group, or all of it, is what leaks. */
  readonly pattern: RegExp;
  readonly severity: 'error' | 'warning';
  /** Tells what looks like it and is none. */
  readonly isNone?: (found: string) => boolean;
}

/** The unit behind a name of a column. */
const DEGREES = '(?:[ _]?(?:deg(?:rees?)?|\\[[^\\]\\n]{0,9}\\]|\\([^)\\n]{0,9}\\)))?';

const SIGNS: readonly Sign[] = [
  {
    what: 'a path of a machine',
    severity: 'error',
    pattern: /(?<![\w.])(?:\/(?:home|Users|media|Volumes)\/|[A-Z]:\\{1,2}Users\\{1,2})[\w.-]+/gi,
    isNone: (found) => EVERYBODY.has(found.split(/[\\/]/).at(-1)!.toLowerCase()),
  },
  // RFC 1918, RFC 3927.
  {
    what: 'an address of a private network',
    severity: 'error',
    pattern:
      /(?<![\d.]|\b(?:v|versions?|firmware|release|build|driver|revision)[\s:=,;"']{0,3})(?:10(?:\.\d{1,3}){3}|192\.168(?:\.\d{1,3}){2}|172\.(?:1[6-9]|2\d|3[01])(?:\.\d{1,3}){2}|169\.254(?:\.\d{1,3}){2})(?![\d.]*\d)/g,
    isNone: (found) => found.split('.').some((part) => Number(part) > 255),
  },
  // RFC 4193, RFC 4291.
  {
    what: 'an address of a private network',
    severity: 'error',
    pattern: /(?<![\w:])(?:fe80|f[cd][0-9a-f]{2}):(?:[0-9a-f]{0,4}:){1,6}[0-9a-f]{1,4}(?![\w:])/gi,
  },
  // RFC 6762, RFC 8375.
  {
    what: 'a name in a private network',
    severity: 'error',
    pattern: /(?<![\w.-])[a-z][\w-]*\.(?:local|lan|home\.arpa)(?![\w.-]*\w)/gi,
  },
  {
    what: "a network card's own number",
    severity: 'error',
    pattern: /(?<![\w:-])(?:(?:[0-9a-f]{2}:){5}|(?:[0-9a-f]{2}-){5})[0-9a-f]{2}(?![\w:-])/gi,
    // Digits between hyphens are a date and a time.
    isNone: (found) => /^(?:00.){5}00$|^(?:ff.){5}ff$|^[\d-]+$/i.test(found),
  },
  {
    what: 'a serial number',
    severity: 'error',
    pattern:
      /\b(?:(?:serial(?:[ _-]?(?:number|no\.?))?|s\/?n)["']?\s*[:=,;]|(?:serial[ _-](?:number|no\.?)|s\/n)["']?\s)\s*["']?([a-z0-9-]*\d[a-z0-9-]*\d[a-z0-9-]{3,})/gi,
  },
  {
    what: 'a position on the earth',
    severity: 'error',
    pattern: /\b(?:lat(?:itude)?|lon(?:gitude)?|lng)["']?\s*[:=,;]\s*["']?(-?\d{1,3}\.\d{3,})/gi,
  },
  {
    what: 'a column of positions',
    severity: 'error',
    pattern: new RegExp(
      `^(?:[^\\n]*[,;\\t])?\\s*["']?((?:gps[_ ])?lat(?:itude)?${DEGREES}["']?[,;\\t]\\s*["']?(?:gps[_ ])?(?:long?|lng|longitude)${DEGREES})(?!\\w)`,
      'gim',
    ),
  },
  { what: 'a mail address', severity: 'warning', pattern: /(?<![\w.+/-])[\w.+-]+@[a-z][\w-]*(?:\.[\w-]+)+/gi },
];

/** Names of accounts and machines that say nothing of anybody. */
const EVERYBODY = new Set([
  'root',
  'user',
  'admin',
  'administrator',
  'runner',
  'node',
  'build',
  'builder',
  'localhost',
  'home',
  'desktop',
  'laptop',
  'server',
  'test',
  'public',
]);

/** Words of every log and write-up that people are named as well: such a name is found in a path alone. */
const WORDS = new Set(['max', 'min', 'mark', 'will', 'grant', 'bench', 'lab', 'data', 'log', 'logs', 'power', 'core', 'may']);

export interface Own {
  /** Names of this machine and of who uses it. */
  readonly names: readonly string[];
  /** What may go out although it looks private. */
  readonly harmless: readonly string[];
}

interface Found {
  readonly what: string;
  readonly severity: 'error' | 'warning';
  /** '' where there is nothing to show. */
  readonly text: string;
  /** What to do, where it is not a matter of words. */
  readonly remedy?: string;
  readonly file: string;
  readonly place: { readonly line: number; readonly column: number; readonly endColumn?: number };
}

/** All that leaks, each told once with the first file that says it, and how many others do. Packed files are unpacked. */
export function leaksOf(files: readonly SiteFile[], own: Own): Problem[] {
  const signs = [...SIGNS, ...own.names.flatMap(signOfName)];
  const found = files.flatMap((file) => ofFile(file, signs));
  const groups = Map.groupBy(
    found.filter(({ text }) => !own.harmless.some((word) => word.toLowerCase() === text.toLowerCase())),
    ({ what, text }) => `${what} ${text.toLowerCase()}`,
  );
  return [...groups.values()].map((group) => told(group as [Found, ...Found[]]));
}

function told(group: readonly [Found, ...Found[]]): Problem {
  const [{ what, severity, text, file, place, remedy }] = group;
  const others = new Set(group.map((each) => each.file)).size - 1;
  const more = others === 0 ? '' : `, and ${others === 1 ? 'so does 1 other file' : `so do ${others} other files`}`;
  const shown = text === '' ? what : `${what}, \`${text}\``;
  return (severity === 'error' ? error : warning)(
    'site-leak',
    { file: `dist/${file}`, ...place },
    `this file says ${shown}${more}`,
    { remedy: remedy ?? `take it out where it comes from; if it may go out, add '${text}' to \`harmless\` in astro.config.mjs` },
  );
}

/** The name of a machine or a person, as a word of its own. */
function signOfName(name: string): Sign[] {
  if (name.length < 3 || [EVERYBODY, WORDS].some((words) => words.has(name.toLowerCase()))) return [];
  const word = name.replaceAll(/[\\^$.*+?()[\]{}|-]/g, '\\$&');
  return [
    { what: 'a name of this machine or of its user', severity: 'error', pattern: new RegExp(`(?<![\\w-])${word}(?![\\w-])`, 'gi') },
  ];
}

const START = { line: 1, column: 1 };

function ofFile({ path, bytes }: SiteFile, signs: readonly Sign[]): Found[] {
  const { texts, binaries, packed, damaged } = contentsOf(bytes);
  const said = texts.flatMap((text) => ofText(text, signs, path));
  return [
    ...(packed ? said.map((each) => ({ ...each, place: START })) : said),
    ...binaries.flatMap((each) => ofPicture(each, path)),
    ...(damaged ? [{ ...CLOSED, file: path, place: START }] : []),
  ];
}

const CLOSED = {
  what: 'something that cannot be unpacked, and that nobody looked into',
  severity: 'warning',
  text: '',
  remedy: 'pack it again, or look into it yourself',
} as const;

function ofPicture(bytes: Uint8Array, file: string): Found[] {
  const kind = kindOf(bytes);
  if (typeof kind !== 'string') return [];
  return leftovers(kind, bytes).map((part) => ({
    what: `something beside its picture (${part}), where cameras write position, time and serial number`,
    severity: 'error',
    text: '',
    remedy: 'export the picture again without it',
    file,
    place: START,
  }));
}

function ofText(text: string, signs: readonly Sign[], file: string): Found[] {
  return signs.flatMap(({ what, severity, pattern, isNone }) =>
    [...text.matchAll(pattern)].flatMap(({ 0: whole, 1: part = whole, index }): Found[] => {
      if (isNone?.(part)) return [];
      const { line, column } = placeIn(text, index + whole.indexOf(part));
      return [{ what, severity, text: part, file, place: { line, column, endColumn: column + part.length } }];
    }),
  );
}
