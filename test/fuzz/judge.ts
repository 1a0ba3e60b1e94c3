/** Reads a written log back, whole and damaged, and says what went wrong. */
import { performance } from 'node:perf_hooks';
import { inspect } from '../../src/intake/inspect.ts';
import type { Log } from '../../src/intake/log.ts';
import { readLong } from '../../src/intake/long-log.ts';
import { type ReadLog, read } from '../../src/intake/read.ts';
import { decode } from '../../src/intake/sheet/decode.ts';
import { unpackedText } from '../../src/intake/sheet/packed.ts';
import { damaged, type Random, type WrittenLog, writtenLog } from './written-log.ts';

export type Fault = 'crash' | 'slow' | 'not read' | 'misread' | 'lost';

export interface Verdict {
  /** What went wrong with the log as written, and with the damaged one; null for nothing. */
  readonly whole: { readonly fault: Fault; readonly why: string } | null;
  readonly harmed: { readonly fault: Fault; readonly why: string } | null;
  /** Whether the damaged log was read, with or without a problem told. */
  readonly harmedIs: 'read the same' | 'read, with problems' | 'refused with problems';
  readonly shape: string;
  readonly how: string;
}

/** No case may take longer, ms. */
const LONGEST = 2000;
const FILE = 'data/a.csv';

/** One case: a log is written, read, damaged, read again. */
export function tryCase(random: Random): Verdict {
  const log = writtenLog(random);
  const { bytes, how } = damaged(log.bytes, random);
  const whole = timed(() => judgeWhole(log) ?? judgeParts(log, log.bytes));
  let harmedIs: Verdict['harmedIs'] = 'read the same';
  const harmed = timed(() => {
    inspect(bytes, FILE);
    const result = judgeHarmed(log, bytes, read(bytes, log.declaration, FILE));
    harmedIs = result.is;
    return result.fault ?? judgeParts(log, bytes);
  });
  return { whole, harmed, harmedIs, shape: log.shape, how };
}

type Found = { readonly fault: Fault; readonly why: string } | null;

function timed(judge: () => Found): Found {
  const from = performance.now();
  try {
    const found = judge();
    const took = performance.now() - from;
    return found ?? (took > LONGEST ? { fault: 'slow', why: `${Math.round(took)} ms` } : null);
  } catch (reason) {
    return { fault: 'crash', why: String(reason) };
  }
}

/** A log as written must be read to the last value, without a problem but for what it lacks. */
function judgeWhole(written: WrittenLog): Found {
  inspect(written.bytes, FILE);
  const { log, problems } = read(written.bytes, written.declaration, FILE);
  const errors = problems.filter(({ severity }) => severity === 'error');
  const refused = !log || problems.some(({ severity }) => severity === 'error');
  if (refused) return { fault: 'not read', why: errors.map(({ found }) => found).join('; ') };
  if (log.rows !== written.lines.length) return { fault: 'lost', why: `${log.rows} of ${written.lines.length} rows` };
  const time = log.time.seconds.findIndex((second, row) => Math.abs(second - written.seconds[row]!) > 1e-6);
  if (time >= 0) return { fault: 'misread', why: `row ${time} at ${log.time.seconds[time]} s instead of ${written.seconds[time]}` };
  for (const channel of log.channels) {
    const wanted = written.values.get(channel.name)!;
    const row = wanted.findIndex((value, at) => !Object.is(channel.values[at], value));
    if (row >= 0) return { fault: 'misread', why: `${channel.column} ${channel.values[row]} instead of ${wanted[row]}` };
  }
  return null;
}

/** Of a damaged log the lines that are whole must be read as before, or a problem must say where something is wrong. */
function judgeHarmed(
  written: WrittenLog,
  bytes: Uint8Array,
  { log, problems }: ReadLog,
): { readonly fault: Found; readonly is: Verdict['harmedIs'] } {
  const told = problems.length > 0;
  if (problems.some(({ place }) => !(place.line >= 1 && place.column >= 1)))
    return { fault: { fault: 'not read', why: 'a problem without a place' }, is: 'refused with problems' };
  if (!log) return { fault: told ? null : { fault: 'lost', why: 'no log and no problem' }, is: 'refused with problems' };
  const refused = problems.filter(({ severity }) => severity === 'error').map(({ found }) => found);
  const fault = unlike(written, log, decode(unpackedText(bytes).plain).text.split('\n'), told, refused);
  return { fault, is: told ? 'read, with problems' : 'read the same' };
}

/** The parts of a log that is read as a long one are so many. */
const PARTS = 2.5;

/** Read as a long log, part by part, it may be refused, which a log of a few dozen rows may well be; but what is read must be as it was. */
function judgeParts(written: WrittenLog, bytes: Uint8Array): Found {
  const result = readLong(bytes, written.declaration, FILE, { part: Math.ceil(bytes.length / PARTS) });
  const { fault } = judgeHarmed(written, bytes, result);
  return fault && { ...fault, why: `in parts: ${fault.why}` };
}

/**
 * The first whole line that is read otherwise, or that is lost where nobody was told of anything. A cell without a reading must be set aside by its
 * place, or its channel refused by its name.
 * @param refused - what errors say.
 */
function unlike(written: WrittenLog, log: Log, lines: readonly string[], told: boolean, refused: readonly string[]): Found {
  const aside = new Set(log.setAside.map(({ line }) => line));
  const rowOf = new Map(written.lines.map((line, row) => [line, row]));
  const read = new Map([...log.lines].map((line, at) => [line, at]));
  let before: { at: number; row: number } | null = null;
  for (const [k, line] of lines.entries()) {
    const row = rowOf.get(line.replace(/\r$/, ''));
    if (row === undefined) continue;
    const at = read.get(k + 1);
    if (at === undefined && told) continue;
    if (at === undefined) return { fault: 'lost', why: `line ${k + 1}: ${line}` };
    for (const channel of log.channels) {
      const wanted = written.values.get(channel.name)![row]!;
      const told = aside.has(k + 1) || refused.some((found) => found.includes(`channel ${channel.name}`));
      const empty = told && Number.isNaN(channel.values[at]);
      if (!empty && !Object.is(channel.values[at], wanted))
        return { fault: 'misread', why: `line ${k + 1}, ${channel.column}: ${channel.values[at]} instead of ${wanted}` };
    }
    if (before) {
      const step = log.time.seconds[at]! - log.time.seconds[before.at]!;
      const wanted = written.seconds[row]! - written.seconds[before.row]!;
      if (Math.abs(step - wanted) > 1e-6)
        return { fault: 'misread', why: `line ${k + 1}: ${step} s after the last, not ${wanted}` };
    }
    before = { at, row };
  }
  return null;
}
