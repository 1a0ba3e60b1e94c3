/** Warns of throttling that came and went between two readings: a sticky bit tells of it, and no reading does. */
import type { RunFigures } from '../../../figures/figure.ts';
import { counted } from '../../../figures/in-words.ts';
import { type Problem, warning } from '../../../problem.ts';
import type { RunTask } from './run-step.ts';

/** One warning a run, at its first flag with sticky bits. */
export function flagWarnings({ figures }: RunFigures, { channels }: Pick<RunTask, 'channels'>): Problem[] {
  const { missed, sticky } = figures.get('throttle_events')?.of ?? {};
  const channel = channels.find((each) => each.sticky !== undefined);
  if (!channel || typeof missed !== 'number') return [];
  const found = `${counted(missed, 'throttle event')} under load came and went between two readings: ${sticky}`;
  const remedy = 'log the flags more often, or say on the page that short events were missed';
  return [warning('missed-throttling', channel.place, found, { remedy })];
}
