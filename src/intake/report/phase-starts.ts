/** Declared phases that the log never reaches: probably a slip in minutes and seconds, or a log that was cut short. */
import { type Problem, warning } from '../../problem.ts';
import type { LogDeclaration, TimeAxis } from '../log.ts';

/** A warning at each phase that begins after the last row. */
export function unreachedPhases({ phaseStarts }: LogDeclaration, { seconds }: TimeAxis): Problem[] {
  const end = seconds.at(-1);
  if (end === undefined) return [];
  return (phaseStarts ?? [])
    .filter(({ from }) => from > end)
    .map(({ name, from, place }) =>
      warning('phase-unreached', place, `phase \`${name}\` begins ${toThree(from - end)} s after the log's last row`, {
        expected: `phases within the log, which ends ${toThree(end)} s after its first row`,
        remedy: 'correct its times or their unit, or remove the phase; it has no figures',
      }),
    );
}

/** Milliseconds suffice for a message. */
function toThree(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}
