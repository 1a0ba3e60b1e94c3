/** Warns of declared phases that the log contradicts: a phase that begins late leaves load in the idle before it, and its means are of both. */
import { plain } from '../../../figures/in-words.ts';
import { type EdgeOff, edgesOff } from '../../../figures/phase-edges.ts';
import type { Log } from '../../../intake/log.ts';
import { type Problem, warning } from '../../../problem.ts';
import type { RunTask } from './run-step.ts';

type Entry = NonNullable<Log['known']>[number];
type OfPhase = Extract<Entry, { readonly phase: string }>;

/**
 * One warning for each edge of a declared phase that lies elsewhere in the log, at the phase. Where the author has explained a phase, `known`
 * tells what was found of it instead, for the page; an explanation of what is not there is warned of.
 */
export function edgeWarnings(
  log: Log,
  { context }: Pick<RunTask, 'context'>,
): { readonly known: Log['known']; readonly problems: readonly Problem[] } {
  const off = context.phases === 'auto' ? [] : edgesOff(log, context.phases);
  const known = log.known?.map(
    (entry): Entry => (isOfPhase(entry) ? { ...entry, found: off.filter(of(entry)).map(foundOf) } : entry),
  );
  const explained = (known ?? []).filter(isOfPhase);
  const left = off.filter((edge) => !explained.some((entry) => of(entry)(edge)));
  const idle = explained.filter(({ found, ofSetup }) => found.length === 0 && !ofSetup);
  return { known, problems: [...left.map(warningOf), ...idle.map(idleWarning)] };
}

function isOfPhase(entry: Entry): entry is OfPhase {
  return 'phase' in entry;
}

function of({ phase }: OfPhase): (edge: EdgeOff) => boolean {
  return (edge) => edge.phase.name === phase;
}

function warningOf(edge: EdgeOff): Problem {
  return warning('phase-off', edge.phase.place, foundOf(edge), {
    expected: `phases that begin and end where the channel \`${edge.channel}\` shows it`,
    remedy: remedyOf(edge),
  });
}

function idleWarning({ phase, place }: OfPhase): Problem {
  return warning('known-idle', place, `nothing is warned of the phase \`${phase}\``, { remedy: 'remove this entry' });
}

function foundOf({ phase, kind, seen, off, channel, gap }: EdgeOff): string {
  const at = `${gap ? `in a gap of the log, between ${plain(gap[0])} and ${plain(gap[1])} s` : `${plain(seen)} s`} after the first row`;
  if (kind === 'holds')
    return `phase \`${phase.name}\` holds ${plain(off)} s of load, from ${at} on, by the channel \`${channel}\``;
  const side = off > 0 ? 'after' : 'before';
  return `phase \`${phase.name}\` ${kind} ${plain(Math.abs(off))} s ${side} the load does, which ${kind} ${at} by the channel \`${channel}\``;
}

function remedyOf({ phase, kind, seen, gap }: EdgeOff): string {
  const fits = `say why it is so under \`known\`, with \`phase: ${phase.name}\``;
  if (kind === 'holds') return `declare that load as a phase of its own, or ${fits}`;
  if (gap) return `let it ${kind === 'begins' ? 'begin' : 'end'} between ${written(gap[0])} and ${written(gap[1])}, or ${fits}`;
  const [from, to] = kind === 'begins' ? [seen, phase.to] : [phase.from, seen];
  const end = Number.isFinite(to) ? ` ${written(to)}` : '';
  return `write \`${phase.name}: ${written(from)} ..${end}\` and fit the phases beside, or ${fits}`;
}

/** Seconds to the millisecond, as a phase is declared. */
function written(seconds: number): string {
  return `${Number(seconds.toFixed(3))} s`;
}
