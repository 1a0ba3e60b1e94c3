/** What took a run's surface readings. */
import { meant, oneOf } from '../values/names.ts';
import type { Inherited } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';
import type { StatedTable } from './table.ts';

/** Reports an instrument that is not in the run's list. */
export function checkSurface(surface: StatedTable | undefined, { instruments }: Inherited, report: Report): void {
  const named = surface?.instrument;
  const listed = (instruments?.value ?? []).map((reference) => reference.value);
  if (!named || listed.includes(named.value)) return;
  const found = `the surface was read by \`${named.value}\`, which is not in the run's list of instruments`;
  report.error('instrument-not-listed', named.place, found, {
    expected: listed.length > 0 ? oneOf(listed) : 'a list `instruments` in the run or in its setup',
    remedy: meant(named.value, listed).remedy ?? `add \`${named.value}\` to \`instruments\``,
  });
}
