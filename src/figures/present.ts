/** Puts a measured value under its name. */

import { absent, isReason, type Of, type Reason } from './absent.ts';
import type { Measured } from './average.ts';
import { type Figure, isPresent, type NameOfFigure, type PresentFigure } from './figure.ts';
import type { Entry, Soak } from './soak.ts';

export interface Extra {
  readonly of?: Of;
  readonly inferred?: readonly string[];
  readonly interval?: readonly [number, number];
}

/** A present figure; what the phases rest on goes along where they were inferred. */
export function present(name: NameOfFigure, soak: Soak, measured: Measured, extra: Extra = {}): PresentFigure {
  const inferred = [...soak.inferred, ...(extra.inferred ?? [])];
  const of = { ...measured.of, ...extra.of };
  return {
    name,
    quantity: measured.quantity,
    from: measured.from,
    ...(extra.interval ? { interval: extra.interval } : {}),
    ...(inferred.length > 0 ? { inferred } : {}),
    ...(Object.keys(of).length > 0 ? { of } : {}),
  };
}

/** Present, or absent for the reason given in its stead. */
export function figureOf(name: NameOfFigure, soak: Soak, outcome: Measured | Reason, extra: Extra = {}): Figure {
  return isReason(outcome) ? absent(name, outcome) : present(name, soak, outcome, extra);
}

/** Says of absent figures too which channel they would have been of, so that an address may name it. */
export function ofChannel(channel: { readonly name: string }, entries: readonly Entry[]): Entry[] {
  return entries.map(([address, figure]) => {
    if (isPresent(figure)) return [address, figure];
    return [address, { ...figure, of: { channel: channel.name, ...figure.of } }];
  });
}
