/** Time constant and asymptote of the step response. */
import { isReason, type Of, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf } from '../average.ts';
import { joinFrom } from '../joined.ts';
import { figureOf } from '../present.ts';
import { addressOf, type Entry, rowsOf } from '../soak.ts';
import { errorsOf, quantityOf, stepOf, stepPart } from '../sources.ts';
import { ambientChannel } from './ambient.ts';
import { isResponse, type Response } from './response.ts';
import { columnsOf } from './steady.ts';
import type { Course } from './thermal.ts';

/** s. Absent where the load changed, did not last two time constants, or the course is not one exponential. */
export function timeConstant(course: Course): Entry {
  const { soak, channel, index, response } = course;
  const address = addressOf('time_constant', channel, index);
  if (!isResponse(response)) return [address, figureOf('time_constant', soak, timeBound(response, course))];
  const step = stepPart(soak.context, address, course.series.step);
  const quantity = quantityOf(response.timeConstant, 's', [...response.parts.timeConstant, step], { stated: true, step: 0 });
  const measured: Measured = {
    quantity,
    from: fromOf(soak, columnsOf(course), course.series.readings),
    of: fitWords(course, response),
  };
  return [address, figureOf('time_constant', soak, measured)];
}

/** A load that is too short for the fit says that the time constant is more than half of it (the fit asks for two). */
function timeBound(reason: Reason, { series }: Course): Reason {
  const { bound, ...rest } = reason;
  if (!bound || reason.absent !== 'too-short') return rest;
  return { ...rest, bound: { relation: '>', value: series.lasted / 2, unit: 's' } };
}

/** °C: where the temperature would end under this load, at the mean ambient of the load phase. */
export function asymptoteTemperature(course: Course): Entry {
  const { soak, channel, index, response } = course;
  const name = 'asymptote_temperature';
  const address = addressOf(name, channel, index);
  return [address, figureOf(name, soak, isResponse(response) ? asymptote(course, response, address) : response)];
}

/**
 * The fit runs over the rise where the ambient is measured; its mean is put back, so the thermometer's offset cancels and
 * only its scatter stays. The temperature sensor's own errors come once, at the asymptote.
 */
function asymptote(course: Course, response: Response, address: string): Measured | Reason {
  const { soak, channel, series } = course;
  const ambient = ambientChannel(soak);
  const measured = ambient && meanOf(soak, ambient, rowsOf(series.phase), 'ambient.load', { about: 'line' });
  if (measured && isReason(measured)) return measured;
  const mean = measured;
  const value = response.asymptote + (mean?.quantity.value ?? 0);
  const scatter = mean?.quantity.parts?.filter((part) => part.source.id.endsWith('/sampling')) ?? [];
  const errors = errorsOf(soak.context, channel, value);
  const step = stepOf(soak.context, channel);
  const floor = stepPart(soak.context, address, step);
  return {
    quantity: quantityOf(value, channel.unit, [...errors.parts, ...response.parts.asymptote, ...scatter, floor], {
      stated: errors.stated,
      step,
    }),
    from: joinFrom(fromOf(soak, [channel], series.readings), mean?.from ?? null),
    of: fitWords(course, response),
  };
}

function fitWords({ channel, series }: Course, { constants }: Response): Of {
  const fit = constants === 1 ? 'one exponential' : 'two exponentials, the slower one is given';
  return { channel: channel.name, fit, ...gapsOf(series.readings) };
}
