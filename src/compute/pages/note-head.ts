/** What stands at the head of a note in one line each, and the lists that lead through it. */
import { printQuantity } from '../../quantities/print.ts';
import type { Condition, Run } from '../../register/register.ts';
import type { ConditionName } from '../../register/values/condition-kinds.ts';
import { settingText } from '../contents/figure-text.ts';
import type { Heading, NoteModel } from '../models/note.ts';

/** Conditions that belong in one line: what carried the heat away. */
const TOLD: readonly ConditionName[] = ['cooling', 'airflow'];

/** A list of as many headings as a window shows serves nobody. */
const FEW = 4;

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

function counted(count: number, noun: string): string {
  return `${NUMBERS[count] ?? count} ${noun}${count === 1 ? '' : 's'}`;
}

/** "Five settings, seven runs, two specimens; 22.4 °C, finned lid, no fan". */
export function testedLine(runs: readonly Run[], shared: readonly Condition[]): string {
  const settings = new Set(runs.map(settingText).filter((text) => text !== ''));
  const specimens = new Set(runs.map(({ device, specimen }) => `${device} ${specimen}`));
  const counts = [
    ...(settings.size > 0 ? [counted(settings.size, 'setting')] : []),
    ...(runs.length === settings.size ? [] : [counted(runs.length, 'run')]),
    counted(specimens.size, 'specimen'),
  ].join(', ');
  const ambients = runs.flatMap(({ context }) => context.ambient ?? []).toSorted((a, b) => a.value - b.value);
  const told = [...new Set(ambients.map((ambient) => printQuantity(ambient).text))];
  const room = told.length > 1 ? [`room at ${told[0]} to ${told.at(-1)}`] : told.map((text) => `room at ${text}`);
  const around = TOLD.flatMap((name) => shared.find((condition) => condition.name === name)?.text ?? []);
  const line = [counts, [...room, ...around].join(', ')].filter((part) => part !== '').join('; ');
  return line.slice(0, 1).toUpperCase() + line.slice(1);
}

const HEADING = /<h2 id="([^"]+)">([\s\S]*?)<\/h2>/g;

/** The headings of the second rank of a note's HTML, without what is marked up in them; none where they are few. */
export function headingsOf(pieces: NoteModel['pieces']): Heading[] {
  const found = pieces.flatMap((piece) => (typeof piece === 'string' ? [...piece.matchAll(HEADING)] : []));
  const headings = found.map(([, id, words]) => ({
    id: id!,
    text: words!
      .replace(/<a class="permalink"[\s\S]*?<\/a>/g, '')
      .replace(/<[^>]*>/g, '')
      .trim(),
  }));
  return headings.length > FEW ? headings : [];
}
