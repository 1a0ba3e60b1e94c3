/** One run's log, its context and its phases together: what every subject derives from. */
import type { Channel, Log, QuantityKind } from '../intake/log.ts';
import type { FigureName } from './catalogue.ts';
import type { RunContext } from './context.ts';
import type { Figure, Phase } from './figure.ts';

export interface Soak {
  readonly log: Log;
  readonly context: RunContext;
  readonly phases: readonly Phase[];
  /** How the phases were inferred; empty when they are declared. */
  readonly inferred: readonly string[];
  /** Why there is no phase, where an edge of a load was seen and not told. */
  readonly untold?: string;
  /** What is left of the climb of the temperature under load, K, by the seconds since the log's first row; null without a fit. */
  readonly warming: ((t: number) => number) | 'load changed' | null;
}

/** A figure under its address without alias. */
export type Entry = readonly [address: string, figure: Figure];

/** A stretch of rows: indices, `to` exclusive. */
export interface Rows {
  readonly from: number;
  readonly to: number;
}

/** Channels of a quantity in declared order; the first is its primary. */
export function channelsOf(log: Log, quantity: QuantityKind): readonly Channel[] {
  return log.channels.filter((channel) => channel.quantity === quantity);
}

/** The phase of that name, or null. */
export function phaseOf(soak: Soak, name: string): Phase | null {
  return soak.phases.find((phase) => phase.name === name) ?? null;
}

export function rowsOf(phase: Phase): Rows {
  return { from: phase.fromRow, to: phase.toRow };
}

/** The bare name for the primary channel, `name.channel` for the others; of a figure, or of the fit that several figures share. */
export function addressOf(name: FigureName | 'response' | 'cooling', channel: { readonly name: string }, index: number): string {
  return index === 0 ? name : `${name}.${channel.name}`;
}
