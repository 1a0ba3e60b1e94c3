/** Phases of a retest: those of the old run where the new log agrees with them, else the ones that the new log shows. */
import { edgesOff, isOfLoad } from '../../figures/phase-edges.ts';
import { detectLoadEdge } from '../../figures/phases.ts';
import type { Log } from '../../intake/log.ts';
import type { Run } from '../../register/register.ts';

/** A phase as it is declared: `300 .. 3900 s`. */
export interface OwnPhase {
  readonly name: string;
  readonly stretch: string;
}

/** Of the new log; `untold`: the declared ones do not fit, and the log does not show which do. Undefined where those of the old run stand. */
export function ownPhases(log: Log | null, { phases }: Pick<Run, 'phases'>): readonly OwnPhase[] | 'untold' | undefined {
  if (phases === 'auto' || log === null || log.rows === 0) return undefined;
  const { seconds } = log.time;
  const last = seconds[log.rows - 1]!;
  if (edgesOff(log, phases).length === 0 && phases.every(({ from }) => from <= last)) return undefined;
  const edges = detectLoadEdge(log);
  const ofLoad = phases.filter(({ name }) => isOfLoad(name));
  if (edges === null || typeof edges === 'string' || edges.loads.length !== 1 || ofLoad.length !== 1) return 'untold';
  const { startRow, endRow } = edges.loads[0]!;
  const load = ofLoad[0]!;
  const before = phases.filter(({ to }) => to <= load.from);
  const after = phases.filter(({ from }) => from >= load.to);
  // One that lies in the load, or shares a stretch with it, has no place in the new log.
  if (before.length > 1 || after.length > 1 || before.length + after.length + 1 < phases.length) return 'untold';
  const start = written(seconds[startRow]!);
  const end = endRow < log.rows ? written(seconds[endRow]!) : undefined;
  return [
    ...before.flatMap(({ name }) => (startRow > 0 ? [{ name, stretch: `0 .. ${start} s` }] : [])),
    { name: load.name, stretch: end === undefined ? `${start} s ..` : `${start} .. ${end} s` },
    ...after.flatMap(({ name }) => (end === undefined ? [] : [{ name, stretch: `${end} s ..` }])),
  ];
}

/** Seconds to the millisecond, as a phase is declared. */
function written(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}
