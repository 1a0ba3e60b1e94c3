/** Collects what repeats: one problem a reason, at the first place, with the count. */
import { visible } from '../../hidden-characters.ts';
import { type Problem, warning } from '../../problem.ts';
import type { SetAside } from '../log.ts';
import { placeOfField, placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { type Acknowledged, NOTHING_KNOWN } from './known.ts';

export interface Reporter {
  readonly problems: Problem[];
  readonly setAside: SetAside[];
  /** What the author knows of the file. */
  readonly known: Acknowledged;
  /** Sets a whole record aside. `reason` goes out, so it says no word of the log; `told`, where it does, is for the author alone. */
  readonly row: (record: number, rule: string, reason: string, told?: string) => void;
  /** Sets one cell of a record aside; the row itself counts. `about` names the column. */
  readonly cell: (record: number, field: number, rule: string, reason: string, about: string, told?: string) => void;
  /** Closes the tally: one warning a reason. */
  readonly close: () => void;
}

interface Tally {
  readonly rule: string;
  readonly record: number;
  readonly field: number;
  readonly reason: string;
  readonly about: string;
  count: number;
}

/** Longest piece of a line that is kept as evidence. */
const EVIDENCE = 120;

/** What is `known` is set aside all the same, and not warned of. */
export function reporterFor(sheet: Sheet, known: Acknowledged = NOTHING_KNOWN): Reporter {
  const problems: Problem[] = [];
  const setAside: SetAside[] = [];
  const tallies = new Map<string, Tally>();
  const lineOf = (record: number) => sheet.records.lines[record] ?? 1;
  const textOf = (record: number) => visible(sheet.lines.at(lineOf(record)).slice(0, EVIDENCE));
  const tally = (key: string, entry: Omit<Tally, 'count'>) => {
    const known = tallies.get(key);
    if (known) known.count++;
    else tallies.set(key, { ...entry, count: 1 });
  };
  return {
    problems,
    setAside,
    known,
    row: (record, rule, reason, told = reason) => {
      setAside.push({ line: lineOf(record), reason, text: textOf(record) });
      if (known.takes(lineOf(record), reason)) return;
      tally(`${rule} ${told.replace(/\d+/g, '#')}`, { rule, record, field: -1, reason: told, about: '' });
    },
    cell: (record, field, rule, reason, about, told = reason) => {
      const place = placeOfField(sheet.file, sheet.lines, lineOf(record), field, sheet.dialect.delimiter);
      setAside.push({ line: lineOf(record), column: place.column, reason: `${about}: ${reason}`, text: textOf(record) });
      if (known.takes(lineOf(record), `${about}: ${reason}`)) return;
      tally(`${rule} ${field}`, { rule, record, field, reason: told, about });
    },
    close: () => {
      for (const entry of tallies.values()) problems.push(problemOf(sheet, entry, lineOf(entry.record)));
      tallies.clear();
    },
  };
}

function problemOf(sheet: Sheet, entry: Tally, line: number): Problem {
  const whole = entry.field < 0;
  const place = whole
    ? placeOfLine(sheet.file, sheet.lines, line)
    : placeOfField(sheet.file, sheet.lines, line, entry.field, sheet.dialect.delimiter);
  const more = entry.count > 1 ? `, and so it is on ${entry.count - 1} other ${entry.count > 2 ? 'lines' : 'line'}` : '';
  const about = entry.about === '' ? '' : `${entry.about}: `;
  return warning(entry.rule, place, `${about}${entry.reason}${more}; ${whole ? 'set aside' : 'taken as no reading'}`, {
    remedy: whole ? remedyOf(entry.rule) : 'if the text means "no reading", name it under `missing` of the channel',
  });
}

function remedyOf(rule: string): string {
  if (rule === 'time-backward')
    return "where summer time ended, `zone` below `time` puts the rows in order; where you know another reason, say it under `known` in the run's file";
  if (rule === 'time-turn-untold')
    return 'where you know the step from row to row, write it below `time` in place of the column, for instance `every: 1 s`';
  return rule === 'last-cell-cut'
    ? 'where you have seen that the line is whole, write `last_line: whole` below `log:`; where it is cut, say so under `known`'
    : "a row that cannot be trusted is kept out, never padded or shifted; where you know why it is so, say it under `known` in the run's file";
}
