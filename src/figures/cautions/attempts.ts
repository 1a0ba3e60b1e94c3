/** The cautions that settings call for which were tried on a specimen. */
import { printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { CLOCK_TOLERANCE } from '../clock/setting.ts';
import { clockQuantity, type Ladder, offsetName } from '../stability/ladder.ts';
import { type Caution, caution } from './caution.ts';

/** Raised voltages and clocks above the rating among the attempts, with the largest of each. */
export function attemptCautions({ attempts, specimen }: Ladder, rated: Quantity | undefined): Caution[] {
  const offset = Math.max(0, ...attempts.map((attempt) => attempt.offset));
  const clock = Math.max(0, ...attempts.map((attempt) => attempt.clock));
  const raised = `Settings with up to ${offsetName(offset).replace(' ', '\u00a0')} more core voltage were tried on specimen ${specimen}.`;
  const cautions = offset > 0 ? [caution('raised-voltage', raised)] : [];
  if (!rated || clock <= rated.value * (1 + CLOCK_TOLERANCE)) return cautions;
  const highest = attempts.find((attempt) => attempt.clock === clock)!;
  const above = `Clocks up to ${printQuantity(clockQuantity(highest)).text} were tried on specimen ${specimen}, above the rated ${printQuantity(rated).text}.`;
  return [...cautions, caution('clock-above-rating', above)];
}
