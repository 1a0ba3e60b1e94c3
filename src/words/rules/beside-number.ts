/** What makes a number without a unit of ours one that data should hold: the words right behind it, or "scores" before it. */
import type { Span } from '../expression/expression-tree.ts';
import { HAPPENINGS } from '../stated/happenings.ts';
import type { Stated } from '../stated/read.ts';
import { COUNT } from './count-words.ts';

/** Where the words end that belong to the number, and its unit where it has one. */
export interface Beside {
  /** Offset in the prose, exclusive. */
  readonly end: number;
  /** The unit as written, for a number that borrows it. */
  readonly unit?: string;
}

/**
 * Reads the words behind a number that has no unit of ours: a unit of the project's scores, a rate ("runs/s", "frames per second"), a unit
 * of benchmarks, a share ("half the power") or a count of things that the data has ("four settings"). Undefined where the number is free.
 */
export function besideNumber(prose: string, said: Stated, own: ReadonlySet<string>): Beside | undefined {
  const rest = prose.slice(said.end);
  const unit = unitBehind(rest, own);
  if (unit) return { end: said.end + unit.length, unit: unit.trim().replace(/^-/, '') };
  const before = prose.slice(0, said.start);
  if (shareOf(said, before, rest) || scored(before) || NAMED_RATIO.test(before) || valued(said, before, rest))
    return { end: said.end };
  const count = counted(said, before, rest);
  return count === undefined ? undefined : { end: said.end + count.length };
}

const SIZES = '(?:[kKMGT]i?)?B|[kKMGT]?bits?|(?:kilo|mega|giga|tera)?bytes?|(?:kilo|mega|giga)bits?';
const PER = String.raw`(?:\s?\/\s?|\s+per\s+)(?:s|sec|seconds?|min|minutes?|h|hours?|W|watts?|J|joules?|Wh|kWh|MHz|GHz|K|kelvin|run|task|test)`;
/** "Eight gigabytes a second", "11 tokens a second". */
const A_SECOND = String.raw`\p{Ll}{3,}s\s+an?\s+(?:second|minute|hour|joule|watt)`;
/** Units of benchmarks and of sound; with the letters that are read as one only right behind digits. */
const BENCHMARK = String.raw`(?:${SIZES}|fps|IOPS|[kMGT]?FLOPS|dB(?:\s?\(?A\)?)?|decibels?)`;
const RATE = String.raw`(?:[kMGT]?[\p{L}_][\p{L}\p{N}_]*(?:[- ]\p{Ll}+)?)${PER}`;
const UNIT = new RegExp(String.raw`^[\s\u00a0-]?(?:${RATE}|${A_SECOND}|${BENCHMARK})(?![\p{L}\p{N}])`, 'u');

/** A unit of the project's scores, of benchmarks or of sound that stands at the start of a text, the blank before it included. */
export function unitBehind(rest: string, own: ReadonlySet<string>): string | undefined {
  for (const word of own) {
    for (const spelling of spellings(word)) {
      const found = new RegExp(String.raw`^[\s\u00a0-]?${escaped(spelling)}(?![\p{L}\p{N}/])`, 'iu').exec(rest)?.[0];
      if (found !== undefined) return found;
    }
  }
  const found = UNIT.exec(rest)?.[0];
  // "A 64-bit image" is a name.
  return found !== undefined && /^-[kKMGT]?bits?$/.test(found) ? undefined : found;
}

/** Digits with a unit right behind them, which a reader of words takes for a name: `939MB/s`. */
export function gluedIn(prose: string, own: ReadonlySet<string>): (Span & { readonly number: number })[] {
  return [...prose.matchAll(/(?<![\p{L}\p{N}.,_/-])\d+(?:[.,]\d+)*(?=[\p{L}])/gu)].flatMap((match) => {
    const number = match.index + match[0].length;
    const unit = unitBehind(prose.slice(number), own);
    return unit === undefined ? [] : [{ start: match.index, number, end: number + unit.length }];
  });
}

/** `runs/s` is also said "runs per second". */
function spellings(word: string): readonly string[] {
  const seconds = /^(.+)\/s$/.exec(word)?.[1];
  return seconds === undefined ? [word] : [word, `${seconds} per second`, `${seconds} a second`];
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);
}

const QUANTITIES =
  'power|energy|current|voltage|time|clock|speed|speedup|rise|temperature|scores?|rate|performance|throughput|bandwidth|gain|work|noise|difference|margin|headroom|consumption|draw|readings|samples|runs?|repeats|load|soak|hour|minutes|test|phase|limit|rating';
const OF_QUANTITY = new RegExp(String.raw`^\s+(?:of\s+)?(?:the|its|that|their)(?:\s+[\p{Ll}-]+){0,2}?\s+(?:${QUANTITIES})\b`, 'u');
/** "It dropped to half", "cut in half". */
const CUT =
  /\b(?:cut|cuts|drops?|dropped|fell|falls?|shrinks?|shrank|reduced|down|back)\s+(?:in|to|by)\s+(?:about\s+|nearly\s+|almost\s+)?$/i;
const OF_THAT = /^\s+(?:of\s+)?that\b/;
const AS_MUCH = /^\s+as\s+(?:fast|quick|slow|much|many|long|hot|warm|cool|high|low|large|small|loud|quiet)\b/;

/** "A third less", "half the power", "half as fast". */
function shareOf({ said }: Stated, before: string, rest: string): boolean {
  if (said.sides.at(-1)?.amount.part === undefined) return false;
  if (said.comparison !== undefined) return true;
  return [OF_QUANTITY, OF_THAT, AS_MUCH].some((behind) => behind.test(rest)) || CUT.test(before);
}

const SCORES = String.raw`\bscor(?:es?|ed|ing)\s+(?:of\s+)?`;
const SCORED = new RegExp(`${SCORES}$`, 'i');
/** "It scored 1,313 at first and 1,290 later". */
const SCORED_TOO = new RegExp(String.raw`${SCORES}\d[\d.,]*(?:\s+\p{Ll}+){0,3}\s+(?:and|or|to|then|against)\s+$`, 'iu');

/** "It scores 1,313". */
function scored(before: string): boolean {
  return SCORED.test(before) || SCORED_TOO.test(before);
}

/** A number of two digits or more behind the name of a quantity. */
function valued({ nominal }: Stated, before: string, rest: string): boolean {
  return nominal >= 10 && NAMED_VALUE.test(before) && CLAUSE_END.test(rest);
}

/** How what was measured came to its value. */
export const CAME_TO = String.raw`(?:is|was|were|are|reaches|reached|hit|comes\s+to|came\s+to|settled\s+at)`;
/** "The peak was 85", "its score in the grid is 96.7": a quantity by its name, and no unit. */
const NAMED_VALUE = new RegExp(
  String.raw`\b(?:temperature|peak|power|draw|clock|voltage|current|headroom|rise|scores?)\b(?:\s+(?:in|of|on|at)\s+(?:the|its)\s+[\p{L}-]+)?\s+${CAME_TO}\s+$`,
  'iu',
);
const CLAUSE_END = /^\s*(?:$|[.,;:!?)](?!\d)|(?:at|for|in|on|with|when|before|after|and|or|but|under|while|where|against)\b)/;
/** "A factor of 4.7", "the exponent is 0.73": ratios by their names. */
const NAMED_RATIO =
  /\b(?:ratio|factor|exponent|speed-?up)\s+(?:(?:of|is|was|at|reaches|comes\s+(?:to|out\s+at)|came\s+(?:to|out\s+at))\s+)?$/i;

/** Things that the data has, and counts. */
export const THINGS = `runs?|combinations?|configurations?|clocks?|repeats?|repetitions?|settings?|specimens?|tests?|benchmarks?|attempts?|rungs|logs|spots?|soaks?|${HAPPENINGS}`;
/** At most one word between the number and the thing, and none that would make it another's. */
const COUNTED = new RegExp(
  String.raw`^(?:\s+of\s+(?:the|its|our|these|those))?(?:\s+(?!(?:of|in|and|or|to|at|for|with|by|per|times?|the|a|an|is|are|was|were|as|that|which|on|from)\b)[\p{Ll}-]+)?\s+(?:${THINGS})\b`,
  'u',
);

/** "Two of three runs": the number itself, the other one is counted apart. */
const OF_SO_MANY = new RegExp(String.raw`^(?=\s+(?:out\s+)?of\s+(?:the\s+)?(?:\d+|[\p{Ll}-]+)\s+(?:${THINGS})\b)`, 'u');

/** "It throttled 300 times", "restarted twice". */
export const HAPPENED =
  /\b(?:throttl(?:es|ed|ing)|restart(?:s|ed)|reboot(?:s|ed)|hangs|hung|crash(?:es|ed)|repeat(?:s|ed)|(?:test|benchmark)s?\s+(?:ran|runs|run|was\s+run|were\s+run)|intervenes?|intervened|steps?\s+in|stepped\s+in)\s+$/i;
const TIMES = /^\s+times\b(?!\s+(?:as|the|that|faster|slower|more|less)\b)/;

/** "Three passed, two hung": a number alone, and what came of so many. */
export const OUTCOMES = 'passed|failed|hung|restarted|rebooted|crashed|throttled|booted|survived|finished';
const CAME_OF = new RegExp(String.raw`^\s+(?:${OUTCOMES}|got\s+through)\b`);

/** None or one are counted where they are events, or one of so many: "one throttle event", "one of 4 runs". */
const FEW = new RegExp(
  String.raw`^(?:\s+(?:throttling|throttles|${HAPPENINGS})\b|(?=\s+(?:(?:of\s+(?:them|these|those)\s+)?(?:${OUTCOMES})\b|(?:out\s+)?of\s+(?:the\s+)?${COUNT}(?:\s+(?:${THINGS}))?\b)))`,
  'u',
);

function counted({ nominal, said }: Stated, before: string, rest: string): string | undefined {
  if (said.sides.length > 1 || !Number.isInteger(nominal)) return undefined;
  if (nominal < 2) return FEW.exec(rest)?.[0];
  const times = HAPPENED.test(before) ? TIMES.exec(rest)?.[0] : undefined;
  if (times !== undefined) return times;
  return COUNTED.exec(rest)?.[0] ?? OF_SO_MANY.exec(rest)?.[0] ?? (CAME_OF.test(rest) ? '' : undefined);
}
