/** Retests: a run that follows another, and the notes and comparisons in which it takes the other's place. */
import type { Run } from '../register.ts';
import type { Reference } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';

/** What a note or comparison says of a retest of one of its runs: that it takes the run's place, or that the run stays. */
export const RETESTS = ['follow', 'stay'] as const;

/** The runs that one follows, the nearest first. */
export function predecessorsOf(id: string, runs: ReadonlyMap<string, Pick<Run, 'follows'>>): string[] {
  const found: string[] = [];
  for (let at = runs.get(id)?.follows; at !== undefined && at !== id && !found.includes(at); at = runs.get(at)?.follows)
    found.push(at);
  return found;
}

/** Tells of runs that follow themselves, also by way of others. */
export function tellCircles(stated: readonly (readonly [id: string, follows: Reference | undefined])[], report: Report): void {
  const runs = new Map(stated.map(([id, follows]) => [id, follows ? { follows: follows.value } : {}]));
  for (const [id, follows] of stated) {
    if (!follows) continue;
    const last = predecessorsOf(id, runs).at(-1) ?? id;
    const circle = follows.value === id || runs.get(last)?.follows === id;
    if (circle)
      report.error('follows-itself', follows.place, `the run \`${id}\` follows \`${follows.value}\`, which follows it`, {
        expected: 'an earlier run of the same setting',
      });
  }
}
