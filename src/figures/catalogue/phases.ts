/** Definition of the figure of phases. */
import { subject } from './subject.ts';

export const PHASES = subject('phases', {
  phase_duration: {
    label: 'duration of the phase',
    unit: 's',
    spoken: 'lasted lasts long length duration ran phase for',
    prior: -0.3,
    publishedChecks: ['rectangular-limits'],
    lists: [],
    uncounted: 'A declared phase lasts as long as its author declares.',
    definition:
      'Time from the beginning of the phase to its end, as declared or as inferred from the log. A phase that is declared past the last row ends there.',
    formula: String.raw`t = t_\mathrm{to} - t_\mathrm{from}`,
    notCovered: ['Whether a declared edge is where the load really changed: the check warns where the log shows it elsewhere.'],
    assumptions: [
      'Each edge that is declared, or inferred from a level, lies within half a step of the log to either side: that of two edges is a standard uncertainty of step/√6 (JCGM 100:2008, 4.3.7). An edge that was inferred from a temperature lies within half a minute to either side.',
      'Whether a declared edge is where the load really changed is not in the interval: the check warns where the log shows it elsewhere.',
    ],
    absentWhen: [
      'there is no such phase',
      'phases are inferred, and an edge lies in a gap of the log',
      'the log has no rows in it',
    ],
    source: 'common practice, no source',
    check: 'hand-counted rows',
  },
});
