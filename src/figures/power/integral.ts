/** Energy as the integral of a power: phase by phase, with gaps filled and as uncertain as the mean power is. */
import { compareText } from '../../problem.ts';
import type { Part } from '../../quantities/quantity.ts';
import type { Reason } from '../absent.ts';
import { courseIn, fromOf, type Measured, scatterMean } from '../average.ts';
import { type Filled, filledWords, fillGaps, gapParts, isFilled, notObserved, reachOf, type Span, type Unfilled } from '../gaps.ts';
import { duration } from '../in-words.ts';
import { readingsOf } from '../readings.ts';
import { type Rows, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, scaled } from '../sources.ts';
import { type Meter, meterRange, meterWords } from './meters.ts';

/** Rows whose power is of one kind: those of a phase, or those between two. */
export interface Piece {
  /** Name of the phase; null where there is none. */
  readonly name: string | null;
  readonly rows: Rows;
  /** Null where it reaches from its first reading to its last. */
  readonly span: Span | null;
}

/** The whole log in pieces: its phases and what lies before, between and after them; in one where phases overlap or there are none. */
export function piecesOf(soak: Soak): readonly Piece[] {
  const { seconds } = soak.log.time;
  const end = soak.log.rows;
  const whole: Piece = { name: null, rows: { from: 0, to: end }, span: null };
  const phases = [...soak.phases].sort((a, b) => a.from - b.from || compareText(a.name, b.name));
  if (phases.some((phase, k) => k > 0 && phase.fromRow < phases[k - 1]!.toRow)) return [whole];
  const pieces: Piece[] = [];
  let [row, moment] = [0, seconds[0] ?? 0];
  for (const phase of phases) {
    if (phase.fromRow > row)
      pieces.push({ name: null, rows: { from: row, to: phase.fromRow }, span: { from: moment, to: phase.from } });
    const { name } = phase;
    if (phase.toRow > phase.fromRow)
      pieces.push({ name, rows: rowsOf(phase), span: { from: Math.max(moment, phase.from), to: phase.to } });
    [row, moment] = [phase.toRow, phase.to];
  }
  if (row < end) pieces.push({ name: null, rows: { from: row, to: end }, span: { from: moment, to: seconds[end - 1]! } });
  return phases.length === 0 ? [whole] : pieces;
}

interface Integrated {
  readonly energy: number;
  readonly seconds: number;
  readonly scatter: readonly Part[];
  readonly filled: Filled | Unfilled;
}

/**
 * The trapezoidal rule over each piece, to whose edges the first and the last reading are held, as the edge is where the power changes. Its
 * scatter is that of the mean power, so that the two agree; gaps are filled as `fillGaps` does. Where they cannot be, the energy of what was
 * logged is a bound: power is not negative.
 */
export function integralOf(
  soak: Soak,
  meter: Meter,
  stretch: { readonly rows: Rows; readonly words: string; readonly pieces: readonly Piece[] },
  address: string,
): Measured | Reason {
  const readings = readingsOf(soak.log, meter.values, stretch.rows);
  if (readings.y.length < 2)
    return { absent: 'no-readings', why: `The power of ${meter.name} has fewer than two readings in ${stretch.words}.` };
  const several = stretch.pieces.length > 1;
  const parts = stretch.pieces.map((piece, k) =>
    integrate(soak, meter, piece, several ? `${address}.${piece.name ?? k}` : address),
  );
  const energy = parts.reduce((sum, part) => sum + part.energy, 0);
  const seconds = parts.reduce((sum, part) => sum + part.seconds, 0);
  const mean = energy / (seconds || 1);
  const errors = meter.errorsAt(mean, stretch.rows);
  const sources = [...scaled(errors.parts, seconds), ...parts.flatMap(({ scatter }) => scatter)];
  const quantity = quantityOf(energy, 'J', sources, { stated: errors.stated, step: 0 });
  const unfilled = parts.map(({ filled }) => filled).filter((filled): filled is Unfilled => !isFilled(filled));
  if (unfilled.length > 0) {
    const lost = { longest: Math.max(...unfilled.map(({ longest }) => longest)), seconds: sumOf(unfilled) };
    const least = intervalOf(quantity)?.[0];
    const logged = { observed: duration(seconds) };
    return {
      ...notObserved(lost, stretch.words),
      ...(least === undefined ? {} : { bound: { relation: '>', value: Math.max(0, least), unit: 'J' } }),
      of: { ...meterWords(meter), ...logged },
    };
  }
  const filled = parts.map((part) => part.filled as Filled);
  const count = filled.reduce((sum, each) => sum + each.count, 0);
  return {
    quantity,
    from: fromOf(soak, meter.channels, readings),
    of: {
      ...meterWords(meter),
      method: 'integral of power, trapezoidal rule',
      observed: duration(seconds - sumOf(filled)),
      ...filledWords({ count, seconds: sumOf(filled) }),
      ...meterRange(soak, meter, mean, stretch.rows),
    },
  };
}

function sumOf(times: readonly { readonly seconds: number }[]): number {
  return times.reduce((sum, { seconds }) => sum + seconds, 0);
}

function integrate(soak: Soak, meter: Meter, { name, rows, span }: Piece, address: string): Integrated {
  const readings = readingsOf(soak.log, meter.values, rows);
  const { t, y, weights, observed } = readings;
  if (y.length === 0) {
    const lost = span ? span.to - span.from : 0;
    return { energy: 0, seconds: 0, scatter: [], filled: lost > 0 ? { longest: lost, seconds: lost } : fillGaps(readings, null) };
  }
  const before = edge(t[0]! - (span?.from ?? t[0]!), reachOf(readings, 'first'));
  const after = edge((span?.to ?? t[t.length - 1]!) - t[t.length - 1]!, reachOf(readings, 'last'));
  const logged = weights.reduce((sum, weight, i) => sum + weight * y[i]!, before * y[0]! + after * y[y.length - 1]!);
  const filled = fillGaps(readings, span);
  const held = observed + before + after;
  const scatter = y.length < 2 ? [] : scaled([scatterMean(soak, readings, meter.grain, address, courseIn(name)).sampling], held);
  if (!isFilled(filled)) return { energy: logged, seconds: held, scatter, filled };
  return {
    energy: logged + filled.integral,
    seconds: held + filled.seconds,
    scatter: [...scatter, ...gapParts(soak, address, filled, 1)],
    filled,
  };
}

/** A stretch at an edge counts where a reading stands for it; what is longer was not observed. */
function edge(length: number, reach: number): number {
  return length > 0 && length <= reach ? length : 0;
}
