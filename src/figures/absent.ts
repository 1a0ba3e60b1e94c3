/** Figures that could not be had, each with its code and a sentence for readers. */
import type { AbsentCode, AbsentFigure, NameOfFigure } from './figure.ts';
import type { Soak } from './soak.ts';

export type Bound = NonNullable<AbsentFigure['bound']>;
export type Of = Readonly<Record<string, string | number | boolean>>;

/** An absence that several figures share, before each puts its name to it. */
export interface Reason {
  readonly absent: AbsentCode;
  readonly why: string;
  readonly bound?: Bound;
  readonly of?: Of;
}

export function absent(name: NameOfFigure, reason: Reason): AbsentFigure {
  return { name, ...reason };
}

export function isReason(value: object): value is Reason {
  return 'absent' in value;
}

/** No channel of the quantity was declared. */
export function noChannel(quantity: string): Reason {
  return { absent: 'no-channel', why: `The log has no ${quantity} channel.` };
}

/** The phase is not declared, or, with automatic phases, no edge was found. */
export function noPhase(soak: Soak, phase: string): Reason {
  const how = soak.context.phases === 'auto' ? 'none was found in the log' : 'none is declared';
  return { absent: 'no-phase', why: soak.untold ?? `The run has no ${phase} phase: ${how}.` };
}

export function noReadings(channel: string, stretch: string): Reason {
  return { absent: 'no-readings', why: `The channel ${channel} has fewer than two readings in ${stretch}.` };
}

/** The stretch is shorter than the figure needs; how long it would have needed goes along as the bound, in seconds. */
export function tooShort(why: string, needed: number): Reason {
  return { absent: 'too-short', why, bound: { relation: '>', value: needed, unit: 's' }, of: { needed_s: needed } };
}
