/** Where a reader puts files, and how answers show. */
import type { DigestEntry } from '../../compute/data/known-files.ts';
import type { Answer } from './answer.ts';

const FILE_INPUT = 'file-to-check';

/** A field for files that can be dropped on too, and the list that its answers go into. */
export function fileBox(take: (files: readonly File[]) => void): { box: HTMLElement; answers: HTMLElement } {
  const box = element('div', 'check-file');
  const label = element('label', '', 'Choose files, or drop them here') as HTMLLabelElement;
  label.htmlFor = FILE_INPUT;
  const input = element('input', '') as HTMLInputElement;
  Object.assign(input, { type: 'file', multiple: true, id: FILE_INPUT });
  // The same file once more must count as a change.
  input.addEventListener('click', () => {
    input.value = '';
  });
  input.addEventListener('change', () => {
    if (input.files !== null && input.files.length > 0) take([...input.files]);
  });
  for (const name of ['dragenter', 'dragover', 'dragleave', 'drop'])
    box.addEventListener(name, (event) => {
      event.preventDefault();
      box.classList.toggle('over', name === 'dragenter' || name === 'dragover');
    });
  box.addEventListener('drop', ({ dataTransfer }) => {
    if (dataTransfer !== null && dataTransfer.files.length > 0) take([...dataTransfer.files]);
  });
  box.append(label, input, element('p', '', 'Nothing is sent anywhere: the digest is computed on your machine.'));
  const answers = element('ul', 'answers');
  answers.setAttribute('aria-live', 'polite');
  answers.setAttribute('aria-label', 'Answers');
  return { box, answers };
}

/** One answer as an item of the list. */
export function answerItem({ name, sha256, published, fault }: Answer, base: string): HTMLElement {
  const item = element('li', '');
  const title = element('strong', '', name);
  item.append(title);
  if (fault !== '') item.append(element('p', 'none', fault));
  else if (published.length === 0) item.append(element('p', 'none', 'This site published no file with this digest.'));
  for (const each of published) item.append(identity(each, base));
  if (sha256 !== '') item.append(element('span', 'raw digest', sha256));
  return item;
}

function identity({ what, of, page, path, elsewhere }: DigestEntry, base: string): HTMLElement {
  const line = element('p', '', `Unchanged: ${what}, `);
  line.append(link(of, base + page));
  if (path !== null) line.append(', published as ', link(path, base + path));
  else if (elsewhere !== undefined) line.append(', kept elsewhere: ', link(elsewhere, elsewhere));
  else line.append(', which is not offered here');
  line.append('.');
  return line;
}

function link(text: string, href: string): HTMLElement {
  const anchor = element('a', '', text) as HTMLAnchorElement;
  anchor.href = href;
  return anchor;
}

function element(name: string, className: string, text = ''): HTMLElement {
  const made = document.createElement(name);
  if (className !== '') made.className = className;
  made.textContent = text;
  return made;
}
