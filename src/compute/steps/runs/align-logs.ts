/** Brings the logs of a run to one clock, and says what stands against it. */
import { type Alignment, alignLog, type Unaligned } from '../../../figures/alignment/align.ts';
import type { AlignedLog } from '../../../figures/alignment/derive-joined.ts';
import { plain } from '../../../figures/in-words.ts';
import type { Log } from '../../../intake/log.ts';
import { error, type Problem, warning } from '../../../problem.ts';
import type { RunLog } from '../../../register/register.ts';

interface ReadRunLog {
  readonly run: RunLog;
  /** Its readings corrected. */
  readonly log: Log;
}

/** All logs with their places on the clock of the first; null, with problems at the logs, where one cannot be brought to it. */
export function alignLogs(logs: readonly ReadRunLog[]): {
  readonly aligned: readonly AlignedLog[] | null;
  readonly problems: readonly Problem[];
} {
  const [first, ...others] = logs;
  if (!first) return { aligned: [], problems: [] };
  const own = { name: first.run.name, log: first.log };
  const problems: Problem[] = [];
  const aligned: AlignedLog[] = [{ ...own, alignment: null }];
  for (const { run, log } of others) {
    const { name, offset, declaration } = run;
    const found = alignLog(own, { name, log, ...(offset ? { offset } : {}) });
    if (typeof found === 'string') problems.push(unaligned(found, own.name, run));
    else {
      problems.push(...apart(found, own.name, declaration.place));
      aligned.push({ name, log, alignment: found });
    }
  }
  return { aligned: aligned.length === logs.length ? aligned : null, problems };
}

const FOUND: Readonly<Record<Unaligned, (log: string, first: string) => string>> = {
  clocks: (log, first) =>
    `the clocks of the logs \`${first}\` and \`${log}\` cannot be brought together: one of them tells no date and zone`,
  undated: (log, first) =>
    `\`offset\` is added to the clock of the log \`${log}\`, and one of the logs \`${first}\` and \`${log}\` tells no date and zone`,
  'no-edges': (log, first) => `the logs \`${first}\` and \`${log}\` do not both show a load, so that no edge brings them together`,
  ambiguous: (log, first) => `the loads of the logs \`${first}\` and \`${log}\` fit each other in several ways`,
  apart: (log, first) => `the log \`${log}\` lies wholly before or after the log \`${first}\``,
};

const BY_WORD = '`starts: 37 ± 1 s` below it: when its first row stands after that of the first log';

function unaligned(why: Unaligned, first: string, { name, declaration }: RunLog): Problem {
  const byEdge =
    why === 'clocks' || why === 'undated' ? ', or `offset: by load edge`, where both show when the load begins or ends' : '';
  return error(`logs-${why}`, declaration.place, FOUND[why](name, first), {
    expected: 'a log on the clock of the first',
    remedy: `write for instance ${BY_WORD}${byEdge}`,
  });
}

/** Clocks that the load contradicts. */
function apart({ name, edgesApart }: Alignment, first: string, place: Problem['place']): Problem[] {
  if (edgesApart === undefined) return [];
  const side = edgesApart > 0 ? 'after' : 'before';
  const found = `by these clocks the load begins or ends ${plain(Math.abs(edgesApart))} s ${side} the log \`${first}\` shows it`;
  return [
    warning('clocks-apart', place, `log \`${name}\`: ${found}`, {
      expected: 'clocks that agree within two seconds',
      remedy: 'write `offset: by load edge` below it, or state the offset',
    }),
  ];
}
