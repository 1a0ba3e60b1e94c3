/** What others published, as pages print it. */
import { printQuantity } from '../../quantities/print.ts';
import type { Quoted } from '../../register/register.ts';
import { figureInWords } from '../../words/expression/in-words.ts';
import type { ShownQuoted } from '../models/shared.ts';
import { conditionRows, uncertaintyText } from './figure-text.ts';

/** Its place on a page. */
export function quotedId(id: string): string {
  return `quoted-${id}`;
}

export function shownQuoted({ id, title, source, device, conditions, figures }: Quoted): ShownQuoted {
  return {
    id: quotedId(id),
    title,
    author: source.author,
    address: source.address,
    published: source.date ?? '',
    accessed: source.accessed,
    conditions: [...(device === undefined ? [] : [{ label: 'device', text: device }]), ...conditionRows(conditions)],
    figures: [...figures.values()].map((figure) => ({
      label: figureInWords(figure.name, ''),
      shown: printQuantity(figure.quantity).text,
      uncertainty: figure.quantity.parts === null ? 'no uncertainty stated' : uncertaintyText(figure),
    })),
  };
}
