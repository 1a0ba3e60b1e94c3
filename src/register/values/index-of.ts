/** Items of one kind by id: read, or known to be broken, so that a reference to a broken file is not reported a second time. */

import type { RuleId } from '../rules.ts';
import type { Report } from '../yaml/report.ts';
import { meant, oneOf } from './names.ts';
import type { Reference } from './stated-value.ts';

/** Up to so many ids are listed in a message. */
const FEW = 6;

export class Index<T> {
  readonly #items = new Map<string, T | undefined>();
  readonly #what: string;
  readonly #rule: RuleId;
  readonly #folder: string;

  /** @param what - "device"; @param folder - name of the folder of content/. */
  constructor(what: string, rule: RuleId, folder: string) {
    this.#what = what;
    this.#rule = rule;
    this.#folder = folder;
  }

  /** Adds an item; undefined = its file is there but has errors. The first item that was read stays. */
  add(id: string, item: T | undefined): void {
    if (this.#items.get(id) === undefined) this.#items.set(id, item);
  }

  /** The item that a reference names. Reports an id that no file has; says nothing of a broken file, whose errors are reported already. */
  find(reference: Reference, report: Report): T | undefined {
    const id = reference.value;
    if (!this.#items.has(id)) {
      report.error(this.#rule, reference.place, `there is no ${this.#what} \`${id}\``, {
        expected: this.#expected(),
        ...meant(id, this.#items.keys()),
      });
    }
    return this.#items.get(id);
  }

  /** All ids where they are few. */
  #expected(): string {
    const ids = [...this.#items.keys()];
    if (ids.length > 0 && ids.length <= FEW) return oneOf(ids);
    return `the id of ${articled(this.#what)}: the name of a file in content/${this.#folder}/ without \`.md\``;
  }

  /** The items that were read, in the order of adding. */
  whole(): Map<string, T> {
    return new Map([...this.#items].filter((entry): entry is [string, T] => entry[1] !== undefined));
  }

  get hasBroken(): boolean {
    return [...this.#items.values()].includes(undefined);
  }
}

function articled(what: string): string {
  return /^[aeiou]/.test(what) ? `an ${what}` : `a ${what}`;
}
