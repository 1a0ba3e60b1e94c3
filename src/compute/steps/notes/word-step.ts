/** A note and the figures its aliases stand for → HTML with places for plots, and the ledger. */
import type { Note } from '../../../register/register.ts';
import type { Recorded } from '../../../words/page/recorded-words.ts';
import { write } from '../../../words/write.ts';
import type { Subject, Written } from '../../../words/written.ts';
import { digestOf } from '../../store/digest.ts';
import { memo } from '../../store/memo.ts';
import type { Store } from '../../store/store.ts';

/** A subject with the key of the result that its figures come from: equal keys mean equal figures. */
export interface KeyedSubject {
  readonly subject: Subject;
  readonly key: string;
}

/** Writes one note, or takes the stored result where note, figures and code are the same. */
export function wordStep(
  store: Store,
  code: string,
  note: Note,
  subjects: ReadonlyMap<string, KeyedSubject>,
  recorded: readonly Recorded[] = [],
): Written {
  const { placeOf: _placeOf, ...declared } = note;
  // The figures are covered by their key; all else that words may see of a subject goes in as it is.
  const named = [...subjects].map(([alias, { subject, key }]) => [alias, key, { ...subject, figures: undefined }]);
  const key = digestOf(['words', code, declared, named, recorded]);
  return memo(store, key, () => {
    return write(note, new Map([...subjects].map(([alias, { subject }]) => [alias, subject])), { unheld: true, recorded });
  });
}
