/** The model of a ledger's page: every number of a note or script in reading order, with all that holds it. */
import { readerForm } from '../../quantities/numeral-print.ts';
import { sayEntry } from '../../words/script/tokens.ts';
import type { LedgerEntry, LedgerKind } from '../../words/written.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import type { LedgerModel } from '../results.ts';
import { heldNote, ledgersOf, marksOf, notePath } from './note.ts';

/** Digits of a number before it was rounded for print, and of its uncertainty: enough to see the rounding. */
const DIGITS = 8;
const DIGITS_OF_U = 3;

const KINDS: Readonly<Record<LedgerKind, string>> = {
  value: 'value',
  stated: 'stated number',
  claim: 'claim',
  table: 'number of a table',
  highlight: 'highlight',
};

/** All that the page prints. Rows are numbered like the notes that they go with; highlights come last. */
export function ledgerModel(parts: SiteContents, computed: ComputedNote): LedgerModel {
  const { note, written } = computed;
  return {
    kind: 'ledger',
    title: `Ledger: ${note.title}`,
    marks: marksOf(parts, computed),
    of: { kind: note.kind, title: note.title, path: notePath(computed) },
    json: ledgersOf(computed).json,
    rows: written.entries.map((entry, index) => ({
      ...heldNote(parts, computed, entry, index + 1),
      kind: KINDS[entry.kind],
      text: ownWords(entry),
      said: note.kind === 'script' && sayEntry(entry) !== entry.shown ? sayEntry(entry) : '',
      value: unrounded(entry),
      verdict: entry.verdict,
      place: `${entry.file}:${entry.line}:${entry.column}`,
      inText: entry.kind !== 'highlight',
    })),
  };
}

/** What stands between the brackets, where the page does not print just that and the expression is another. */
function ownWords({ text, shown, expression }: LedgerEntry): string {
  return text === shown || text.trim() === expression ? '' : text;
}

function unrounded({ value, unit, u }: LedgerEntry): string {
  const number = digits(value, DIGITS) + (unit === '' ? '' : `\u00a0${unit}`);
  if (u === null) return `${number}, standard uncertainty not known`;
  if (u === 0) return `${number}, exact`;
  const ofU = unit === '°C' ? 'K' : unit;
  return `${number}, standard uncertainty ${digits(u, DIGITS_OF_U)}${ofU === '' ? '' : `\u00a0${ofU}`}`;
}

function digits(value: number, count: number): string {
  const rounded = String(Number(value.toPrecision(count)));
  return rounded.includes('e') ? rounded.replace('-', '−') : readerForm(rounded);
}
