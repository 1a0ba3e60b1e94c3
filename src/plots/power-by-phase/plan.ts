/** Mean power of each phase in each run, with its 95 % interval. */

import { isReason } from '../../figures/absent.ts';
import type { FigureName } from '../../figures/catalogue.ts';
import { type Figure, isPresent } from '../../figures/figure.ts';
import { type Meter, meterMean, metersOf } from '../../figures/power/meters.ts';
import { figureOf as figureFrom } from '../../figures/present.ts';
import { rowsOf } from '../../figures/soak.ts';
import type { MeasuredAt } from '../../intake/log.ts';
import { error, type Problem } from '../../problem.ts';
import type { PlotRequest } from '../../register/requests.ts';
import { meant, oneOf } from '../../register/values/names.ts';
import { figureOf, runName } from '../data/figure-text.ts';
import { soakOf } from '../data/measured-run.ts';
import { tooMany } from '../data/requested-channels.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { MOST_LINES } from '../drawing/palette.ts';
import type { Plan, Planned } from '../drawing/plan.ts';
import { stylesOf } from '../drawing/styles.ts';
import { layOutPower } from './layout.ts';
import { powerAlt, powerCsv, powerMethod, powerTable, powerTitle } from './words.ts';

/** Mean power of one run in one phase. */
export interface PowerBar {
  readonly alias: string;
  /** Style of its run, from 0. */
  readonly k: number;
  readonly figure: Figure;
  /** Where its power is measured; null where the run does not say. */
  readonly at: MeasuredAt | null;
}

export interface PowerGroup {
  readonly phase: string;
  readonly bars: readonly PowerBar[];
}

export interface PowerByPhase {
  /** Where it is measured, if that is known and the same in all runs. */
  readonly at: string | null;
  readonly groups: readonly PowerGroup[];
}

/** Plans the mean power by phase, of the primary power or of the one channel asked for. */
export function planPowerByPhase(request: PlotRequest, subjects: readonly PlotSubject[]): Planned {
  if (subjects.length > MOST_LINES) return [tooMany(request, subjects.length)];
  if (request.channels.length > 1) return [notOne(request)];
  const found = subjects.map((subject) => meterOf(request, subject));
  const problems = found.filter((each): each is Problem => 'severity' in each);
  if (problems.length > 0) return problems;
  const meters = found as Meter[];
  const stated = subjects.flatMap((subject, k) => (meters[k]!.at === null ? [] : [{ subject, at: meters[k]!.at }]));
  if (new Set(stated.map(({ at }) => at)).size > 1) return [differentPlaces(request, stated)];
  const styles = stylesOf(request);
  const groups = phasesOf(subjects).map((phase) => ({
    phase,
    bars: subjects.map((subject, k) => barOf(subject, meters[k]!, phase, styles[k]!)),
  }));
  if (!groups.some(({ bars }) => bars.some(({ figure }) => isPresent(figure)))) return [noPhases(request)];
  const places = new Set(meters.map(({ at }) => at));
  return powerPlan({ at: places.size === 1 ? meters[0]!.at : null, groups }, request.title);
}

function powerPlan(power: PowerByPhase, title?: string): Plan {
  const { at, groups } = power;
  return {
    title: title ?? powerTitle(power),
    alt: powerAlt(power),
    method: powerMethod(power),
    csv: powerCsv(power),
    table: powerTable(power),
    layOut: (size) => layOutPower(power, size),
    shown: groups[0]!.bars.map(({ alias, k }) => ({ name: alias, k })),
    ...(groups.length > 1 ? { parts: () => groups.map((group) => powerPlan({ at, groups: [group] }, title)) } : {}),
  };
}

/** Names of phases in the order in which runs bring them up. */
function phasesOf(subjects: readonly PlotSubject[]): string[] {
  return [...new Set(subjects.flatMap(({ derived }) => derived.phases.map(({ name }) => name)))];
}

function meterOf(request: PlotRequest, subject: PlotSubject): Meter | Problem {
  const { meters, why } = metersOf(soakOf(subject));
  const names = meters.map(({ name }) => name);
  const [wanted] = request.channels;
  const meter = wanted === undefined ? meters[0] : meters.find(({ name }) => name === wanted);
  if (meter) return meter;
  if (meters.length === 0) {
    return error(
      'no-power',
      request.place,
      `the run ${runName(subject)} has no power to draw: ${why?.why.replace(/\.$/, '') ?? ''}`,
      {
        expected: 'a power channel, or a current with its voltage',
      },
    );
  }
  return error('unknown-channel', request.place, `the run ${runName(subject)} has no power channel \`${wanted}\``, {
    expected: `one of its powers: ${oneOf(names)}`,
    ...meant(wanted ?? '', names),
  });
}

/** Phases whose mean power is a figure of the catalogue. */
const OWN: Readonly<Record<string, FigureName>> = { idle: 'idle_power', load: 'load_power' };

/** The run's own figure where the catalogue has one for the phase; for other phases the mean by the figures' own function. */
function barOf(subject: PlotSubject, meter: Meter, phase: string, k: number): PowerBar {
  const name = Object.hasOwn(OWN, phase) ? OWN[phase] : undefined;
  const own = name && figureOf(subject, name, meter.name);
  return { alias: runName(subject), k, figure: own ?? meanIn(subject, meter, phase), at: meter.at };
}

function meanIn(subject: PlotSubject, meter: Meter, phase: string): Figure {
  const soak = soakOf(subject);
  const name = 'mean_power';
  const found = soak.phases.find((each) => each.name === phase);
  if (!found) return { name, absent: 'no-phase', why: `The run has no ${phase} phase.` };
  const mean = meterMean(soak, meter, rowsOf(found), `${name}.${phase}`);
  return isReason(mean) ? { name, ...mean } : figureFrom(name, soak, mean);
}

/** A bar at the wall beside one at the board input would compare two devices with and without their adapters. */
function differentPlaces(
  request: PlotRequest,
  stated: readonly { readonly subject: PlotSubject; readonly at: MeasuredAt | null }[],
): Problem {
  const places = stated.map(({ subject, at }) => `${runName(subject) || subject.title} at the ${at}`).join(', ');
  return error('different-places', request.place, `powers of different places cannot stand in one plot: ${places}`, {
    expected: 'runs whose power is measured at the same place',
    remedy: 'draw one plot for each place, or name a channel that all runs measure at the same one',
  });
}

function notOne(request: PlotRequest): Problem {
  return error('wrong-channels', request.place, `mean power cannot be drawn of ${request.channels.join(', ')} together`, {
    expected: 'one power channel, or none for the primary power',
    remedy: 'draw one plot for each channel',
  });
}

function noPhases(request: PlotRequest): Problem {
  return error('no-phases', request.place, 'no run has a phase with readings of power', {
    expected: 'phases in the runs, declared or `auto`',
  });
}
