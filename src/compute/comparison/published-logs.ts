/** The logs of a run as `figures.json` and record copies name them. */
import type { PublishedLog, PublishedLogs } from '../../figures/figures-json.ts';
import type { LogSummary, RunSummary } from '../steps/runs/run-step.ts';

/** The first for itself, further ones with their place on its clock; nothing where the run has none. */
export function publishedLogs({ logs: [first, ...others] }: RunSummary): PublishedLogs {
  if (!first) return {};
  if (others.length === 0) return { log: logOf(first) };
  const placed = others.map((each) => ({ ...logOf(each), name: each.name, begins_s: each.alignment!.at, u_s: each.alignment!.u }));
  return { log: logOf(first), other_logs: placed };
}

function logOf({ file, sha256, rows, span }: LogSummary): PublishedLog {
  return { file: `data/${file}`, sha256, rows, span_s: span };
}
