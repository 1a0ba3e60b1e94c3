/** The controls of the page: native elements that stand as the view says, and say what the reader makes of it. */
import type { QuantityKind } from '../../intake/log.ts';
import { tokenOf } from './address.ts';
import { byId, el } from './dom.ts';
import type { Offer } from './offers.ts';
import { MOST_PLOTS, UNITS, type View } from './view.ts';

export interface Controls {
  /** What there is to choose from: names of runs by their ids, one of which is the reference; and what can be drawn of them. */
  offer(names: ReadonlyMap<string, string>, reference: string, offers: readonly Offer[]): void;
  /** Sets every control as the view has it. */
  write(view: View): void;
}

const PER_MINUTE = 60;
/** Windows are kept to the millisecond. */
const THOUSANDTHS = 1000;

/** `change` is told what of the view a control changes. */
export function readControls(change: (part: Partial<View>) => void): Controls {
  const reference = byId<HTMLSelectElement>('reference');
  const shown = byId('shown');
  const axis = byId('axis');
  const ends = { from: byId<HTMLInputElement>('from'), to: byId<HTMLInputElement>('to') };
  const units = [...document.querySelectorAll<HTMLSelectElement>('select[data-quantity]')];
  let offered: readonly Offer[] = [];
  let view: View | undefined;

  reference.addEventListener('change', () => change({ reference: reference.value }));
  shown.addEventListener('change', () => {
    const ticked = boxes(shown)
      .filter(({ checked }) => checked)
      .map(({ value }) => value);
    const next = offered.filter(({ token }) => ticked.includes(token)).map((each) => each.shown);
    change({ show: next.slice(0, MOST_PLOTS) });
  });
  axis.addEventListener('change', () => change({ as: radio('rise').checked ? 'rise' : 'absolute' }));
  for (const select of units) select.addEventListener('change', () => change({ units: unitsOf(units) }));
  for (const name of ['from', 'to'] as const)
    ends[name].addEventListener('change', () => change(windowWith(view, name, ends[name])));

  return {
    offer: (names, base, offers) => {
      const told = [...reference.options].map(({ value, text }) => [value, text]);
      if (String([...names]) !== String(told))
        reference.replaceChildren(...[...names].map(([id, name]) => el('option', { value: id }, name)));
      reference.value = base;
      offered = offers;
      const tokens = offers.map(({ token }) => token);
      if (String(tokens) !== String(boxes(shown).map(({ value }) => value)))
        shown.querySelector('div')!.replaceChildren(...offers.map(({ token, label }) => boxFor(token, label)));
    },
    write: (next) => {
      view = next;
      const tokens = next.show.map(tokenOf);
      for (const box of boxes(shown)) {
        box.checked = tokens.includes(box.value);
        // The last one stays: a plot of nothing is none. So do the others where no more fit.
        box.disabled = box.checked ? tokens.length === 1 : tokens.length >= MOST_PLOTS;
      }
      const drawn = next.show.map(({ quantity }) => quantity);
      axis.hidden = !drawn.includes('temperature');
      radio(next.as).checked = true;
      for (const select of units) {
        select.value = next.units[select.dataset.quantity as QuantityKind] ?? '';
        select.closest('p')!.hidden = !drawn.includes(select.dataset.quantity as QuantityKind);
      }
      for (const name of ['from', 'to'] as const) ends[name].value = minutes(next[name]);
    },
  };
}

function boxes(group: HTMLElement): HTMLInputElement[] {
  return [...group.querySelectorAll<HTMLInputElement>('input[type="checkbox"]')];
}

function boxFor(value: string, label: string): HTMLElement {
  return el('label', {}, el('input', { type: 'checkbox', name: 'show', value }), ` ${label}`);
}

function radio(as: View['as']): HTMLInputElement {
  return byId<HTMLInputElement>(`as-${as}`);
}

function unitsOf(selects: readonly HTMLSelectElement[]): View['units'] {
  const chosen = selects.filter(({ value }) => value !== '').map((select) => [select.dataset.quantity, select.value]);
  return Object.fromEntries(chosen.filter(([quantity]) => UNITS[quantity as QuantityKind] !== undefined));
}

/** An end that would leave nothing to see opens the other one. */
function windowWith(view: View | undefined, name: 'from' | 'to', { value }: HTMLInputElement): Partial<View> {
  const end = value === '' ? null : Math.round(Number(value) * PER_MINUTE * THOUSANDTHS) / THOUSANDTHS;
  const ends = { from: view?.from ?? null, to: view?.to ?? null };
  ends[name] = end;
  const { from, to } = ends;
  if (from !== null && to !== null && from >= to) return name === 'from' ? { from, to: null } : { from: null, to };
  return { from, to };
}

function minutes(seconds: number | null): string {
  return seconds === null ? '' : String(Math.round((seconds / PER_MINUTE) * 1e6) / 1e6);
}
