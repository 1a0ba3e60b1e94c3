/**
 * The page that checks downloaded files. A file is read and its digest computed in the browser; nothing of it leaves the machine.
 * Without scripting the page still has the digests and says how to compute one.
 */
import type { Digests } from '../compute/data/known-files.ts';
import { answerOf } from './verify/answer.ts';
import { answerItem, fileBox } from './verify/box.ts';

const place = document.getElementById('check')!;
const base = place.dataset.base!;
let digests: Promise<Digests> | undefined;

/** Asked for with the first file: most readers of the page only look. A failure is tried again with the next file. */
function loadDigests(): Promise<Digests> {
  digests ??= fetch(place.dataset.digests!)
    .then((response) => (response.ok ? (response.json() as Promise<Digests>) : Promise.reject(new Error(`${response.status}`))))
    .catch((thrown) => {
      digests = undefined;
      throw thrown;
    });
  return digests;
}

if (globalThis.crypto?.subtle === undefined) {
  const note = document.createElement('p');
  note.textContent =
    'This browser computes digests only on pages that come over https or from this machine. Use one of the commands below.';
  place.append(note);
} else {
  const { box, answers } = fileBox((files) => void check(files, answers));
  place.append(box, answers);
}

/** The newest files only: their answers replace those of the files before. */
async function check(files: readonly File[], answers: HTMLElement): Promise<void> {
  const turn = String(Number(answers.dataset.turn ?? 0) + 1);
  answers.dataset.turn = turn;
  answers.replaceChildren();
  for (const file of files) {
    const answer = await answerOf(file, loadDigests);
    if (answers.dataset.turn !== turn) return;
    answers.append(answerItem(answer, base));
  }
}
