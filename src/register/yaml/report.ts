/** Where the readers of the register put what they find wrong; all problems come together at the end. */
import { error, type Place, type Problem, warning } from '../../problem.ts';
import type { RuleId } from '../rules.ts';

type More = Pick<Problem, 'expected' | 'remedy'>;

export class Report {
  readonly problems: Problem[] = [];
  #errors = 0;

  error(rule: RuleId, place: Place, found: string, more: More = {}): void {
    this.#errors += 1;
    this.problems.push(error(rule, place, found, more));
  }

  warning(rule: RuleId, place: Place, found: string, more: More = {}): void {
    this.problems.push(warning(rule, place, found, more));
  }

  /** What `read` gives, or undefined where it reported an error on its way: half of a file is never used. */
  whole<T>(read: () => T | undefined): T | undefined {
    const before = this.#errors;
    const value = read();
    return this.#errors === before ? value : undefined;
  }
}
