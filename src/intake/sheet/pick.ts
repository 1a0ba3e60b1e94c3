/** Which column a declaration means. */
import { error, type Place, type Problem } from '../../problem.ts';
import { nearestName } from '../cells/names.ts';
import type { Sheet } from './open.ts';

/** Index of the column whose header text (or key) is `name`; else the problem that says what there is instead. */
export function pickColumn(sheet: Sheet, name: string, place: Place, what: string): number | Problem {
  const wanted = name.trim();
  const names = sheet.names ?? [];
  const same = names.flatMap((text, k) => (text === wanted ? [k] : []));
  if (same.length === 1) return same[0]!;
  const byKey = sheet.keys.indexOf(wanted);
  if (byKey >= 0) return byKey;
  if (same.length > 1) {
    const keys = same.map((k) => `\`${sheet.keys[k]}\``).join(', ');
    return error('column-ambiguous', place, `the log has ${same.length} columns named \`${wanted}\``, {
      expected: `one of ${keys}`,
      remedy: 'write the name with its number, counted from the left',
    });
  }
  const nearest = nearestName(wanted, sheet.keys);
  return error('column-not-found', place, `${what} names the column \`${wanted}\`, which ${sheet.file} does not have`, {
    expected: `one of ${listed(sheet.keys)}`,
    ...(nearest === undefined ? {} : { remedy: `did you mean \`${nearest}\`?` }),
  });
}

/** Up to twelve names in backquotes. */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 12).map((name) => `\`${name}\``);
  return names.length > 12 ? `${shown.join(', ')} and ${names.length - 12} more` : shown.join(', ');
}
