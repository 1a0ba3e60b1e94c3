/** A figure of several settings before its verdict: that depends on how many such figures are judged together. */
import type { Quantity } from '../../quantities/quantity.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import type { Figure, From, NameOfFigure } from '../figure.ts';
import { isTellable } from '../sources.ts';
import type { Derived, Setting } from './compared.ts';

/** What a figure is held against. */
export interface Question {
  /** The value that equal settings would have: 1 for a ratio, 0 for a difference. */
  readonly neutral: number;
  /** `linear`: whether speed grows in proportion to the clock, over all settings or between two; `share`: whether there is any. */
  readonly kind: 'apart' | 'linear' | 'share';
  /** The two settings that it lies between; none where it is of all of them. */
  readonly between?: readonly [Setting, Setting];
  /** It joins scores with a clock or a power: where one stands in for theirs, nothing is concluded. */
  readonly joins?: boolean;
  /** Two specimens have two sensors: scatter alone does not tell them apart. */
  readonly sensors?: boolean;
}

/** A present figure that can be judged. */
export interface Asked extends Question {
  readonly quantity: Quantity;
  /** Degrees of freedom of the spread between runs; 0 where it is unknown. */
  readonly dof: number;
  readonly standsIn: readonly string[];
}

export interface Tested {
  readonly address: string;
  readonly figure: Figure;
  /** Null of an absent figure. */
  readonly asked: Asked | null;
}

/** Puts a derived value, or the reason for none, under its name. */
export function tested(name: NameOfFigure, address: string, outcome: Derived | Reason, of: Of, question: Question): Tested {
  if (isReason(outcome)) return { address, figure: absent(name, { ...outcome, of: { ...of, ...outcome.of } }), asked: null };
  const { quantity, origins, inferred = [], standsIn = [] } = outcome;
  if (!isTellable(quantity)) {
    const why = 'The numbers are too large or too small to compute with.';
    return { address, figure: absent(name, { absent: 'out-of-range', why, of }), asked: null };
  }
  const from: From = { figures: [...new Set(origins.flatMap(({ names }) => names))].sort(), columns: [], rows: null };
  const dof = Math.min(...origins.map((origin) => origin.dof));
  const figure: Figure = {
    name,
    quantity,
    from,
    ...(inferred.length > 0 ? { inferred: [...new Set(inferred)] } : {}),
    of: {
      ...of,
      ...outcome.of,
      ...runsOf(question.between),
      ...(dof > 0 ? { between_runs_dof: dof } : { between_runs: 'unknown' }),
      ...(standsIn.length > 0 ? { stands_in: [...new Set(standsIn)].join('; ') } : {}),
    },
  };
  return { address, figure, asked: { ...question, quantity, dof, standsIn } };
}

/** "2 against 3", where one of the two settings has several runs. */
function runsOf(between: Question['between']): Of {
  if (!between || between.every(({ runs }) => runs.length === 1)) return {};
  return { runs: `${between[0].runs.length} against ${between[1].runs.length}` };
}
