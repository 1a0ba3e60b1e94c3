/** What of a run's setting and conditions makes it alike to another. */
import { compareText } from '../../problem.ts';
import type { Condition, Run } from '../register.ts';

/** Setting and conditions as one text, but for the conditions named in `apart`. Quantities count as what they are, not as written. */
export function likenessOf({ setting, conditions }: Pick<Run, 'setting' | 'conditions'>, apart: readonly string[]): string {
  const said = [...setting.map(oneText), ...conditions.filter(({ name }) => !apart.includes(name)).map(oneText)];
  return said.sort(compareText).join('\n');
}

function oneText({ name, text, quantity }: Condition): string {
  return `${name}: ${quantity ? `${quantity.value} ${quantity.unit}` : text}`;
}
