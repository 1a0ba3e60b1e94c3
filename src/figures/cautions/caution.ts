/** A safety notice: what was done or found, and what that risks. Several of one kind merge into one. */
import { CAUTION_ORDER, type CautionId, RISKS } from './risks.ts';

export interface Caution {
  /** Permanent name: `raised-voltage`. */
  readonly id: CautionId;
  /** What was done or found, one sentence. */
  readonly done: string;
  /** What that risks and whom to ask: the same for every caution of this id. */
  readonly risk: string;
  /** Both. */
  readonly text: string;
}

export interface MergedCaution {
  readonly id: CautionId;
  /** Each sentence once, in the order of the runs. */
  readonly done: readonly string[];
  readonly risk: string;
}

export function caution(id: CautionId, done: string): Caution {
  return { id, done, risk: RISKS[id], text: `${done} ${RISKS[id]}` };
}

/** Cautions of several runs, one a kind: what was done each time, the risk once. */
export function mergeCautions(cautions: readonly Caution[]): MergedCaution[] {
  return CAUTION_ORDER.flatMap((id) => {
    const done = new Set(cautions.filter((each) => each.id === id).map((each) => each.done));
    return done.size === 0 ? [] : [{ id, done: [...done], risk: RISKS[id] }];
  });
}
