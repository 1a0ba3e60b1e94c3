/** From a request to a plan and a specification, by the kind of plot. */
import type { PlotKind, PlotRequest } from '../register/requests.ts';
import { planAgainst } from './against/plan.ts';
import { comparedPlanner } from './data/comparison-planner.ts';
import { planDeltas } from './deltas/plan.ts';
import type { AttemptsSubject, ComparedSubject, PlotSubject } from './drawing/drawn.ts';
import { isPlan, type Planned, type Planner } from './drawing/plan.ts';
import type { Size } from './drawing/size.ts';
import type { Spec } from './drawing/vega.ts';
import { planPowerByPhase } from './power-by-phase/plan.ts';
import { planScaling } from './scaling/plan.ts';
import { planScores } from './scores/plan.ts';
import { planStability } from './stability/plan.ts';
import { planStepResponse } from './step-response/plan.ts';
import { planThermal } from './thermal/plan.ts';
import { planTrace } from './trace/of-logs.ts';

const PLANNERS: Readonly<Record<PlotKind, Planner>> = {
  trace: planTrace,
  'step-response': planStepResponse,
  'power-by-phase': planPowerByPhase,
  against: planAgainst,
  stability: planStability,
  thermal: planThermal,
  scaling: comparedPlanner(planScaling),
  deltas: comparedPlanner(planDeltas),
  scores: comparedPlanner(planScores),
};

/** Plans the plot asked for, or tells by located errors why it cannot be drawn. */
export function plan(
  request: PlotRequest,
  subjects: readonly PlotSubject[],
  attempts: readonly AttemptsSubject[] = [],
  compared: ComparedSubject | null = null,
): Planned {
  return PLANNERS[request.kind](request, subjects, attempts, compared);
}

/** The Vega-Lite specification alone, in one size; null where the request has errors. */
export function specify(request: PlotRequest, subjects: readonly PlotSubject[], size: Size): { readonly spec: Spec | null } {
  const planned = plan(request, subjects);
  return { spec: isPlan(planned) ? planned.layOut(size) : null };
}
