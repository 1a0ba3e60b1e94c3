/** Corrections as pages, the feed and the text to paste show them, and the signs beside corrected numbers. */
import type { Note, Register } from '../../register/register.ts';
import type { Correction } from '../../register/sealed/published-states.ts';
import { expressionInWords, type Titles } from '../../words/expression/in-words.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import { fragmentOf, freeId, shortDigest } from '../../words/page/fragment.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import { correctionsAsText } from '../published-state/corrections-text.ts';
import { stateKey } from '../published-state/present-state.ts';
import { newestFirst } from '../published-state/protect.ts';
import { plain } from '../published-state/same-value.ts';
import type { CorrectedTogether, FeedModel, PrintedCorrection } from '../results.ts';

/** What a page says of the corrections of its note or script, and where they stand as text ('' where there are none). */
export function correctionsOf(
  parts: SiteContents,
  computed: ComputedNote,
): { readonly corrections: readonly CorrectedTogether[]; readonly correctionsFile: string } {
  const own = shownCorrections(parts, computed);
  return { corrections: together(own), correctionsFile: own.length === 0 ? '' : correctionsFile(computed) };
}

/** The file of corrections beside a page, as path and text; nothing where there are none. */
export function correctionsText(parts: SiteContents, computed: ComputedNote): [path: string, text: string][] {
  const own = shownCorrections(parts, computed);
  return own.length === 0 ? [] : [[correctionsFile(computed), correctionsAsText(computed.note.title, together(own))]];
}

function correctionsFile({ note }: ComputedNote): string {
  return `${stateKey(note)}/corrections.txt`;
}

/** Newest first. */
function shownCorrections({ corrections, register }: SiteContents, { note }: ComputedNote): PrintedCorrection[] {
  const own: readonly Correction[] = corrections.get(stateKey(note)) ?? [];
  if (own.length === 0) return [];
  const titles = titlesOf(note, register);
  return own.map((each) => ({ ...each, label: expressionInWords(each.number, titles) }));
}

/** What readers know the aliases of a note by. */
function titlesOf(note: Note, { runs, comparisons, attempts }: Register): Titles {
  return new Map([
    ...[...note.runs].map(([alias, id]) => [alias, runs.get(id)?.title ?? alias] as const),
    ...[...note.comparisons].map(([alias, id]) => [alias, comparisons.get(id)?.title ?? alias] as const),
    ...[...(note.attempts ?? [])].map(([alias, id]) => [alias, attempts.get(id)?.title ?? alias] as const),
  ]);
}

/** Each with an id for its place in the page, which stays when others come. */
function identified(corrections: readonly PrintedCorrection[]): (PrintedCorrection & { readonly id: string })[] {
  const ids = new Set<string>();
  return corrections.map((each) => {
    const { since, number, was, is, sentence, cue = '' } = each;
    const own = shortDigest(JSON.stringify([number, was, is, sentence, cue]));
    const id = freeId(`corrected:${since}-${fragmentOf(number)}-${own}`, ids);
    ids.add(id);
    return { ...each, id };
  });
}

/** Those of one day and reason stand together where the first of them stands. */
function together(corrections: readonly PrintedCorrection[]): CorrectedTogether[] {
  const groups = Map.groupBy(identified(corrections), ({ since, reason, closed }) => JSON.stringify([since, reason, closed]));
  return [...groups.values()].map((group) => {
    const { since, reason, closed } = group[0]!;
    const numbers = group.map(({ id, label, was, is, cue, sentence }) => ({ id, label, was, is, cue, sentence }));
    return { since, reason, closed, numbers };
  });
}

/** Ids of the open corrections of numbers, by number: the newest of each. */
export function correctedNumbers(parts: SiteContents, computed: ComputedNote): ReadonlyMap<number, string> {
  const open = identified(shownCorrections(parts, computed));
  const found = new Map<number, string>();
  for (const [index, { kind, expression, shown }] of computed.written.entries.entries()) {
    if (kind === 'highlight') continue;
    const own = open.find(
      ({ number, was, is, closed }) =>
        closed === undefined && number === plainExpression(expression) && [was, is].includes(plain(shown)),
    );
    if (own) found.set(index + 1, own.id);
  }
  return found;
}

const HELD = /<a class="held"[^>]*? data-n="(\d+)">[^<]*<\/a>/g;

/** HTML with a sign behind each corrected number, which leads to its correction. */
export function markCorrected(html: string, corrected: ReadonlyMap<number, string>): string {
  if (corrected.size === 0) return html;
  return html.replace(HELD, (held, number: string) => {
    const id = corrected.get(Number(number));
    return id === undefined ? held : `${held}<a class="corrected" href="#${id}" aria-label="corrected since">†</a>`;
  });
}

/** The feed of corrections. Law 9: only of published notes, also where drafts show; null where there are none. */
export function feedModel(parts: SiteContents): FeedModel | null {
  const published = parts.notes.filter(({ note }) => note.status === 'published');
  const entries = published.flatMap((computed) =>
    identified(shownCorrections(parts, computed)).map(({ id, ...each }) => {
      return { ...each, title: computed.note.title, path: `${stateKey(computed.note)}/#${id}` };
    }),
  );
  const days = [...published.map(({ note }) => note.date), ...entries.map(({ since }) => since)].sort();
  return published.length === 0 ? null : { entries: newestFirst(entries), updated: days.at(-1)! };
}
