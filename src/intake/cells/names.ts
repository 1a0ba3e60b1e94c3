/** Names of columns: distinct keys for equal names, and the nearest right spelling of a wrong one. */
import { nearest } from '../../quantities/nearest.ts';

/** Keys in order: the name itself where it is unique, `temp (1)`, `temp (2)` where it is not, `column 3` where there is none. */
export function columnKeys(names: readonly string[]): string[] {
  const totals = new Map<string, number>();
  for (const name of names) totals.set(name, (totals.get(name) ?? 0) + 1);
  const taken = new Set(names);
  const seen = new Map<string, number>();
  return names.map((name, k) => {
    if (name !== '' && totals.get(name) === 1) return name;
    let number = name === '' ? k + 1 : (seen.get(name) ?? 0) + 1;
    const keyOf = () => (name === '' ? `column ${number}` : `${name} (${number})`);
    while (taken.has(keyOf())) number++;
    seen.set(name, number);
    taken.add(keyOf());
    return keyOf();
  });
}

/** The name most probably meant: the same but for case, blanks and unit, one that contains it, or the one with the fewest slips. */
export function nearestName(name: string, candidates: readonly string[]): string | undefined {
  const wanted = simple(name);
  const same = candidates.find((candidate) => simple(candidate) === wanted);
  if (same !== undefined) return same;
  if (wanted.length > 1) {
    const around = candidates.find(
      (candidate) => simple(candidate).includes(wanted) || (simple(candidate).length > 1 && wanted.includes(simple(candidate))),
    );
    if (around !== undefined) return around;
  }
  return nearest(name, candidates);
}

function simple(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
}
