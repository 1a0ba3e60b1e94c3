/** JSON of unknown origin, read strictly: each value knows where it stands, so that a message can say what was expected there. */

/** Why a text cannot be used, in words. */
export interface Unreadable {
  readonly unreadable: string;
}

export function isUnreadable(value: object): value is Unreadable {
  return 'unreadable' in value;
}

/** Reads a published file, which begins with its format. Never throws: what departs from the form comes back in words. */
export function readable<T>(text: string, read: (file: Json) => T): T | Unreadable {
  try {
    const file = Json.parse(text);
    if (file.at('format').number() !== 1) return { unreadable: 'its format is not 1, the only one that is known here' };
    return read(file);
  } catch (thrown) {
    if (thrown instanceof MalformedJson) return { unreadable: thrown.message };
    throw thrown;
  }
}

/** Says where a JSON text departs from what it should be. */
class MalformedJson extends Error {}

/** A value of a parsed text, and the way to it: `figures.load_power.value`. */
export class Json {
  readonly #value: unknown;
  readonly #path: string;

  private constructor(value: unknown, path: string) {
    this.#value = value;
    this.#path = path;
  }

  /** Throws MalformedJson where the text is no JSON. */
  static parse(text: string): Json {
    try {
      return new Json(JSON.parse(text), '');
    } catch {
      throw new MalformedJson('it is not JSON');
    }
  }

  /** A member that must be there. */
  at(key: string): Json {
    return this.maybe(key) ?? this.#member(key).refuse('something');
  }

  /** A member, or undefined where there is none. */
  maybe(key: string): Json | undefined {
    return this.has(key) ? this.#member(key) : undefined;
  }

  has(key: string): boolean {
    return Object.hasOwn(this.#object(), key);
  }

  entries(): [string, Json][] {
    return Object.keys(this.#object()).map((key) => [key, this.#member(key)]);
  }

  /** An object as it stands. The caller answers for its form. */
  plain<T extends object>(): T {
    return this.#object() as T;
  }

  /** Null as null, so that `?.` passes it on. */
  nullable(): Json | null {
    return this.#value === null ? null : this;
  }

  text(): string {
    return typeof this.#value === 'string' ? this.#value : this.refuse('a text');
  }

  number(): number {
    return typeof this.#value === 'number' && Number.isFinite(this.#value) ? this.#value : this.refuse('a number');
  }

  positive(): number {
    return this.number() > 0 ? this.number() : this.refuse('a number above zero');
  }

  scalar(): string | number | boolean {
    return typeof this.#value === 'boolean' ? this.#value : typeof this.#value === 'string' ? this.#value : this.number();
  }

  oneOf<T extends string>(names: readonly T[]): T {
    return names.find((name) => name === this.#value) ?? this.refuse(`one of ${names.join(', ')}`);
  }

  list(): Json[] {
    if (!Array.isArray(this.#value)) return this.refuse('a list');
    return this.#value.map((each, index) => new Json(each, `${this.#path}[${index}]`));
  }

  flag(): boolean {
    return typeof this.#value === 'boolean' ? this.#value : this.refuse('true or false');
  }

  numbers(): readonly number[] {
    return this.list().map((each) => each.number());
  }

  pair(): readonly [number, number] {
    const [first, second, ...more] = this.list();
    return first && second && more.length === 0 ? [first.number(), second.number()] : this.refuse('two numbers');
  }

  /** Throws MalformedJson: what was expected here. */
  refuse(expected: string): never {
    const found = this.#value === undefined ? 'nothing' : (JSON.stringify(this.#value) ?? 'nothing');
    const shown = found.length > 40 ? `${found.slice(0, 40)}…` : found;
    throw new MalformedJson(`${this.#path || 'the whole'} holds ${shown}, and ${expected} was expected`);
  }

  #object(): Record<string, unknown> {
    const value = this.#value;
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return this.refuse('an object');
    return value as Record<string, unknown>;
  }

  #member(key: string): Json {
    return new Json(this.#object()[key], this.#path === '' ? key : `${this.#path}.${key}`);
  }
}
