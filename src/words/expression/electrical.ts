/** Electrical figures of different places (wall, adapter output, board input, rail, battery) are not added, subtracted or compared. */
import type { Evaluated, Outcome } from './evaluate.ts';
import type { Span } from './expression-tree.ts';

/** Whether a unit has a current, voltage, power or energy in it. */
export function isElectrical(unit: string): boolean {
  return unit.split(/[^A-Za-z]+/).some((part) => part === 'A' || part === 'V' || part === 'W' || part === 'J');
}

/** The problem with operands read at different places; undefined where there is none. What states no place is not judged. */
export function differentPlaces(operands: readonly Outcome[], { start, end }: Span): Outcome | undefined {
  const placed = operands.filter((operand): operand is Evaluated => 'quantity' in operand && operand.at.length > 0);
  const first = placed[0]?.at.join(' and ');
  const other = placed.map(({ at }) => at.join(' and ')).find((place) => place !== first);
  if (first === undefined || other === undefined) return undefined;
  const found = `an electrical figure at ${first} against one at ${other}`;
  const remedy = 'what lies between the two places (adapter, regulators) uses power itself';
  return { problems: [{ rule: 'different-places', start, end, found, expected: 'figures of the same place', remedy }] };
}
