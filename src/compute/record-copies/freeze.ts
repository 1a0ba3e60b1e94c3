/** A comparison as it is now → a record copy. */
import { compareText } from '../../problem.ts';
import type { RecordCopy } from '../../register/sealed/record-copies.ts';
import { isProblem } from '../../register/sealed/sealed-file.ts';
import type { Gathered } from '../models/gathered.ts';
import { canonicalText } from '../store/canonical-json.ts';
import { type Content, copyFile, copyId, sealedCopy } from './copy.ts';
import { type ReadCopy, readCopy } from './read-copies.ts';

export interface Frozen {
  readonly copy: RecordCopy;
  readonly file: string;
  readonly text: string;
}

/** The copy as of a day. Throws where it would not be read back: a fault of ours that must not reach a permalink. */
export function freeze(gathered: Gathered, date: string): Frozen {
  // The parser gives what a reader of the file will get: no −0, no absent members.
  const record = JSON.parse(canonicalText(gathered)) as Content['record'];
  const content = { format: 1, date, record } as const;
  const copy = { ...content, id: copyId(content) };
  const [file, text] = [copyFile(copy.id), sealedCopy(copy)];
  const back = readCopy({ path: file, text });
  if (isProblem(back)) throw new Error(`the copy would not be read back: ${back.found}`);
  return { copy, file, text };
}

/** The copy that holds the same already, whatever its day. */
export function alreadyFrozen(gathered: Gathered, copies: readonly ReadCopy[]): RecordCopy | undefined {
  const text = canonicalText(gathered);
  return copies.find(({ copy }) => copy.record.id === gathered.id && canonicalText(copy.record) === text)?.copy;
}

/** The day of the newest run, which no copy can be older than. */
export function newestDay({ runs }: Pick<Gathered, 'runs'>): string {
  return runs
    .map(({ date }) => date)
    .toSorted(compareText)
    .at(-1)!;
}
