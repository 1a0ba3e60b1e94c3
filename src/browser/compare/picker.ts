/** The list of published runs that the page has in its HTML: which are chosen, and which are listed. */
import { byId } from './dom.ts';

export interface Picker {
  /** Ids of all runs of the site. */
  readonly known: ReadonlySet<string>;
  /** Their ids by the ids that they had before. */
  readonly renamed: ReadonlyMap<string, string>;
  /** Ticks the boxes of these runs and no others. */
  mark(runs: readonly string[]): void;
}

/** `choose` is told of each box that the reader ticks or clears. */
export function readPicker(choose: (id: string, ticked: boolean) => void): Picker {
  const list = byId('runs');
  const boxes = [...list.querySelectorAll<HTMLInputElement>('input[name="run"]')];
  list.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLInputElement && target.name === 'run') choose(target.value, target.checked);
  });
  const words = byId<HTMLInputElement>('words');
  const texts = boxes.map((box) => itemOf(box).textContent.toLowerCase());
  words.addEventListener('input', () => listOnly(boxes, texts, words.value));
  return {
    known: new Set(boxes.map(({ value }) => value)),
    renamed: new Map(boxes.flatMap(({ value, dataset: { was } }) => (was?.split(' ') ?? []).map((id) => [id, value] as const))),
    mark: (runs) => {
      for (const box of boxes) box.checked = runs.includes(box.value);
    },
  };
}

/** Runs whose line has all of the words; what is ticked stays in sight. */
function listOnly(boxes: readonly HTMLInputElement[], texts: readonly string[], asked: string): void {
  const words = asked.toLowerCase().split(/\s+/);
  for (const [index, box] of boxes.entries())
    itemOf(box).hidden = !box.checked && !words.every((word) => texts[index]!.includes(word));
  for (const group of document.querySelectorAll<HTMLElement>('#runs fieldset'))
    group.hidden = [...group.querySelectorAll<HTMLElement>('li')].every((item) => item.hidden);
}

function itemOf(box: HTMLInputElement): HTMLElement {
  return box.closest('li')!;
}
