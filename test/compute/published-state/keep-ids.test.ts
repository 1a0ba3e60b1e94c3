import { describe, expect, it } from 'vitest';
import { keepIds } from '../../../src/compute/published-state/keep-ids.ts';
import { presentState } from '../../../src/compute/published-state/present-state.ts';
import type { Sources } from '../../../src/compute/published-state/sources.ts';
import type { NoteOutcome } from '../../../src/compute/steps/notes/notes.ts';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../../words/subjects.ts';

const NO_SOURCES: Sources = { of: () => [], sha256: () => '' };

/** A note of this text as it would go out. */
function addressed(text: string) {
  const note = noteOf(text);
  const outcome = { note, written: write(note, TWO), reaches: [] } as unknown as NoteOutcome;
  return { outcome, present: presentState(outcome, [], NO_SOURCES) };
}

const THEN = addressed('It reached :value[fast.peak_temperature] in the end.\n\nA draw of :value[fast.load_power] was seen.');
const idsOf = ({ present }: Pick<typeof THEN, 'present'>) => present.entries.map(({ id }) => id);

describe('compute/published-state/keep-ids', () => {
  it('keeps the address of a number whose sentence was written anew, in the words, the ledger and the state', () => {
    const edited = addressed(
      'A draw of :value[fast.load_power] was seen.\n\nIn the end, it only got to :value[fast.peak_temperature].',
    );
    expect(idsOf(edited)).not.toEqual(idsOf(THEN).toReversed());
    const kept = keepIds(edited, THEN.present);
    expect(idsOf(kept)).toEqual(idsOf(THEN).toReversed());
    expect(kept.outcome.written.entries.map(({ id }) => id)).toEqual(idsOf(kept));
    const html = kept.outcome.written.pieces.join('');
    expect([...html.matchAll(/ id="([^"]+)" href="#held:([^"]+)"/g)].map(([, id, note]) => [id, note])).toEqual(
      idsOf(kept).map((id) => [id, id]),
    );
  });

  it('leaves all as it is where nothing was published, nothing edited, or a state is from before ids', () => {
    expect(keepIds(THEN, undefined)).toEqual(THEN);
    expect(keepIds(THEN, THEN.present)).toEqual(THEN);
    const older = { ...THEN.present, entries: THEN.present.entries.map(({ id: _id, ...entry }) => entry) };
    const now = addressed('Now :value[fast.peak_temperature].');
    expect(keepIds(now, older)).toEqual(now);
  });

  it('gives no number the address that another has', () => {
    const both = addressed(
      'It reached :value[fast.peak_temperature] in the end.\n\nOnce more :value[fast.peak_temperature] was reached in this test.',
    );
    expect(idsOf(keepIds(both, THEN.present))).toEqual(idsOf(both));
    // The published number's own words are gone, while what was published of another is what a number of now has.
    const stolen = { ...THEN.present, entries: THEN.present.entries.map((entry) => ({ ...entry, id: idsOf(both)[1]! })) };
    const kept = idsOf(keepIds(both, stolen));
    expect(new Set(kept).size).toBe(kept.length);
  });
});
