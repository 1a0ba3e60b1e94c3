/** The trace that a note or a run's page asks for, drawn from logs. */
import { error, type Problem } from '../../problem.ts';
import type { PlotRequest } from '../../register/requests.ts';
import { runName } from '../data/figure-text.ts';
import { type Slot, slotsOf } from '../data/requested-channels.ts';
import { riseOver } from '../data/rise-over-ambient.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import type { Planned } from '../drawing/plan.ts';
import { stylesOf } from '../drawing/styles.ts';
import { loggedChannel, loggedRun } from './logged-run.ts';
import { traceOf } from './panels.ts';
import { tracePlan } from './plan.ts';

/** Plans the readings of the channels asked for, in all runs, over time since the start of the load. */
export function planTrace(request: PlotRequest, subjects: readonly PlotSubject[]): Planned {
  const { slots, problems } = slotsOf(request, subjects);
  const lacking = request.rise ? withoutAmbient(request, slots, subjects) : [];
  if (problems.length > 0 || lacking.length > 0) return [...problems, ...lacking];
  const traced = slots.map(({ name, channels }) => ({
    name,
    channels: channels.map((channel, run) => loggedChannel(subjects[run]!, channel)),
  }));
  return tracePlan(traceOf(traced, subjects.map(loggedRun), { rise: request.rise, styles: stylesOf(request) }), request.title);
}

function withoutAmbient(request: PlotRequest, slots: readonly Slot[], subjects: readonly PlotSubject[]): Problem[] {
  if (!slots.some(({ channels }) => channels[0]?.quantity === 'temperature')) return [];
  const channel = (subject: PlotSubject) => subject.log.channels.find((each) => each.quantity === 'temperature');
  return subjects
    .filter((subject) => channel(subject) && riseOver(subject, channel(subject)!) === null)
    .map((subject) =>
      error('no-ambient', request.place, `the run ${runName(subject)} has no ambient, so its rise cannot be drawn`, {
        expected: 'a channel of quantity `ambient`, or `ambient` under its conditions',
        remedy: 'state the ambient, or draw the temperature itself',
      }),
    );
}
