import type { RuleId } from '../../../src/register/rules.ts';
import type { Edit } from '../base.ts';

/** One rule broken: what is written, the whole report that follows, and something near to it that is right. */
export interface Case {
  readonly rule: RuleId;
  readonly bad: readonly Edit[];
  readonly report: readonly string[];
  readonly ok: readonly Edit[];
}
