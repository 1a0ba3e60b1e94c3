/** What read the values, and how well, in words. */
import type { Register } from '../../register/register.ts';

export interface InstrumentRow {
  readonly id: string;
  readonly title: string;
  readonly accuracy: string;
}

/** An instrument of the register with its stated accuracies. */
export function instrumentRow(register: Register, id: string): InstrumentRow {
  const { title, facts } = register.instruments.get(id)!;
  const stated = Object.entries(facts.accuracy).map(([quantity, accuracy]) => `${quantity.replaceAll('_', ' ')} ${accuracy.text}`);
  return { id, title, accuracy: stated.length === 0 ? 'no accuracy stated: repeatability only' : stated.join('; ') };
}
