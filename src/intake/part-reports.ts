/** What the parts of a long log say, each for itself, as one account. */
import type { Problem } from '../problem.ts';
import type { Inference } from './log.ts';

/** The digits of a name, such as `core_1`, are no number. */
function withoutNumbers(text: string): string {
  return text.replace(/(?<![\p{L}\d_-])\d[\d.,]*/gu, '#');
}

/** Problems of all parts: what repeats from part to part is told once, at its first place. */
export function mergedProblems() {
  const all = new Map<string, { readonly problem: Problem; more: number }>();
  return {
    add: (problems: readonly Problem[]) => {
      for (const problem of problems) {
        const { rule, found, place } = problem;
        const key = `${rule} ${withoutNumbers(found)}`;
        const known = all.get(key);
        if (!known) all.set(key, { problem, more: 0 });
        else if (known.problem.place.line !== place.line) known.more++;
      }
    },
    list: (): Problem[] =>
      [...all.values()].map(({ problem, more }) =>
        more === 0
          ? problem
          : { ...problem, found: `${problem.found} (${more === 1 ? 'one more part' : `${more} more parts`} of this long log too)` },
      ),
  };
}

/** Inferences of all parts: what the first says stands; what a later one says in other numbers is said to be of the first. */
export function mergedInferences() {
  const all = new Map<string, { readonly inference: Inference; differs: boolean }>();
  return {
    add: (inferences: readonly Inference[]) => {
      for (const inference of inferences) {
        const key = `${inference.method} ${withoutNumbers(inference.statement)}`;
        const known = all.get(key);
        if (!known) all.set(key, { inference, differs: false });
        else if (known.inference.statement !== inference.statement) known.differs = true;
      }
    },
    list: (): Inference[] =>
      [...all.values()].map(({ inference, differs }) =>
        differs
          ? { ...inference, statement: `${inference.statement} Other parts of this long log differ in the numbers.` }
          : inference,
      ),
  };
}
