/** What an address stands for: a figure, setting, condition or rating of one of the note's subjects, or what is wrong with it. */
import { figuresOf } from '../../figures/catalogue.ts';
import { type Figure, isPresent } from '../../figures/figure.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isSnakeName, meant, oneOf } from '../../register/values/names.ts';
import type { Subject } from '../written.ts';
import type { Address, NamePart, Span } from './expression-tree.ts';
import type { TextProblem } from './text-problem.ts';

export type Subjects = ReadonlyMap<string, Subject>;

/** Where an address leads. `key` is how the subject itself spells it. */
export type Destination = { readonly alias: string; readonly subject: Subject; readonly key: string } & (
  | { readonly figure: Figure }
  | { readonly fact: Quantity }
);

/** Follows an address. With one subject its alias may be left out. `unusable`: it needs a log that could not be used. */
export function follow(address: Address, subjects: Subjects): Destination | TextProblem | 'unusable' {
  const [first, ...rest] = address.parts as [NamePart, ...NamePart[]];
  const named = subjects.get(first.name);
  const direct = named && lookUp(first.name, named, namesOf(rest));
  if (direct) return direct;
  const only = onlySubject(subjects);
  const implied = only && lookUp(only[0], only[1], namesOf(address.parts));
  if (implied) return implied;
  if ((named ?? only?.[1])?.unusable) return 'unusable';
  if (named) return rest.length === 0 ? aliasAlone(first, named) : notFound(named, first.name, rest, spanOf(rest));
  if (!only) return unknownAlias(address, subjects);
  if (rest.length > 0 && lookUp(only[0], only[1], namesOf(rest))) return unknownAlias(address, subjects);
  return notFound(only[1], only[0], address.parts, address);
}

/** The figure that an address leads to, present or not; undefined where it leads to none. */
export function addressedFigure(address: Address, subjects: Subjects): Figure | undefined {
  const found = follow(address, subjects);
  return typeof found === 'object' && 'figure' in found ? found.figure : undefined;
}

/** Looks names up within one subject: a figure's exact key, a figure whose own details they are, a fact. */
function lookUp(alias: string, subject: Subject, names: readonly string[]): Destination | undefined {
  for (const key of [names.join('.'), names.map(quotedWhereOdd).join('.')]) {
    const figure = subject.figures.get(key);
    if (figure) return { alias, subject, key, figure };
    const fact = subject.facts.get(key);
    if (fact) return { alias, subject, key, fact };
  }
  return byDetail(alias, subject, names);
}

/** `peak_temperature.soc` where the bare `peak_temperature` is that of the channel soc. */
function byDetail(alias: string, subject: Subject, names: readonly string[]): Destination | undefined {
  for (let length = names.length - 1; length > 0; length -= 1) {
    const key = names.slice(0, length).join('.');
    const figure = subject.figures.get(key);
    const details = figure ? detailsOf(figure) : [];
    // Where the whole of it is absent, so is each of its spots and tests, for the same reason.
    const fits = figure && (names.slice(length).every((name) => details.includes(name)) || isWholeAbsent(subject, key));
    if (fits) return { alias, subject, key, figure };
  }
  return undefined;
}

function isWholeAbsent({ figures }: Subject, key: string): boolean {
  const figure = figures.get(key);
  const others = [...figures.keys()].some((other) => other.startsWith(`${key}.`));
  return figure !== undefined && !isPresent(figure) && !others && BY_TABLE.has(figure.name);
}

/** Figures of tables that a run may lack: its spots are not known then. */
const BY_TABLE: ReadonlySet<string> = new Set(figuresOf('surface'));

const DETAILS = ['channel', 'phase', 'test', 'spot'] as const;

function detailsOf({ of }: Figure): string[] {
  return DETAILS.map((detail) => of?.[detail]).filter((value) => typeof value === 'string');
}

/** The only run, beside whatever else the note names; else the only subject. */
function onlySubject(subjects: Subjects): readonly [string, Subject] | undefined {
  const runs = [...subjects].filter(([, { kind }]) => kind === 'run');
  if (runs.length === 1) return runs[0];
  return subjects.size === 1 ? [...subjects][0] : undefined;
}

function namesOf(parts: readonly NamePart[]): string[] {
  return parts.map(({ name }) => name);
}

function spanOf(parts: readonly NamePart[]): Span {
  return { start: parts[0]?.start ?? 0, end: parts.at(-1)?.end ?? 0 };
}

/** A key as an author writes it. */
export function spelled(key: string): string {
  return key.includes('"') ? key : key.split('.').map(quotedWhereOdd).join('.');
}

function quotedWhereOdd(name: string): string {
  return isPlainName(name) ? name : `"${name}"`;
}

/** Whether a name needs no quotes in an address. */
export function isPlainName(name: string): boolean {
  return /^[A-Za-z0-9_]+$/.test(name);
}

function aliasAlone(first: NamePart, subject: Subject): TextProblem {
  const name = [...subject.figures.keys()][0] ?? 'peak_temperature';
  const found = `the alias \`${first.name}\` alone`;
  return {
    rule: 'unknown-figure',
    start: first.start,
    end: first.end,
    found,
    expected: `a figure after it, such as \`${first.name}.${name}\``,
  };
}

function unknownAlias({ parts, start, end }: Address, subjects: Subjects): TextProblem {
  const first = parts[0] as NamePart;
  if (subjects.size === 0) {
    return {
      rule: 'unknown-alias',
      start,
      end,
      found: `\`${first.name}\` in a file that names no runs`,
      expected: 'an alias under `runs`',
      remedy: `add to the front matter (of a script too)\n      runs:\n        ${parts.length > 1 && isSnakeName(first.name) ? first.name : 'fast'}: name-of-a-file-in-content-runs`,
    };
  }
  const known = [...subjects].find(([alias, subject]) => lookUp(alias, subject, namesOf(parts)));
  const turned = turnedAddress(namesOf(parts), subjects);
  const remedy = turned
    ? { remedy: `did you mean \`${turned}\`?` }
    : known
      ? { remedy: `write \`${known[0]}.${namesOf(parts).map(quotedWhereOdd).join('.')}\`` }
      : meant(first.name, subjects.keys());
  const found = `unknown alias \`${first.name}\``;
  return { rule: 'unknown-alias', start: first.start, end: first.end, found, expected: oneOf([...subjects.keys()]), ...remedy };
}

function notFound(subject: Subject, alias: string, parts: readonly NamePart[], span: Span): TextProblem {
  const names = namesOf(parts);
  const head = names[0] as string;
  const details = detailsKnown(subject, head);
  return details.length > 0
    ? unknownDetail(alias, head, names.slice(1), details, span)
    : unknownFigure(subject, alias, names, span);
}

/** Every detail under which a subject has a figure or fact of that name. */
function detailsKnown(subject: Subject, head: string): string[] {
  const bare = subject.figures.get(head);
  const keys = [...subject.figures.keys(), ...subject.facts.keys()].filter((key) => key.startsWith(`${head}.`));
  return [...new Set([...(bare ? detailsOf(bare) : []), ...keys.map((key) => key.slice(head.length + 1))])];
}

function unknownDetail(alias: string, head: string, rest: readonly string[], details: readonly string[], span: Span): TextProblem {
  const detail = rest.join('.');
  const found =
    detail === '' ? `\`${head}\` of \`${alias}\` without saying which` : `no \`${head}\` for \`${detail}\` in \`${alias}\``;
  const wanted = details.map((each) => spelled(`${head}.${each}`));
  return { rule: 'unknown-detail', ...span, found, expected: listed(wanted), ...meant(`${head}.${detail}`, wanted) };
}

function unknownFigure(subject: Subject, alias: string, names: readonly string[], span: Span): TextProblem {
  const keys = [...subject.figures.keys(), ...subject.facts.keys()].map(spelled);
  const heads = [...new Set(keys.map((key) => key.split('.')[0] as string))];
  const turned = turnedNames(alias, subject, names);
  const remedy = turned === undefined ? meant(names.join('.'), keys) : { remedy: `did you mean \`${turned}\`?` };
  const found = `unknown figure \`${names.join('.')}\` of \`${alias}\``;
  return {
    rule: 'unknown-figure',
    ...span,
    found,
    expected: listed(heads),
    ...(remedy.remedy ? remedy : meant(names[0] as string, heads)),
  };
}

/** `cpu.peak_temperature` -> `peak_temperature.cpu`, where the names lead to something in another order. */
function turnedNames(alias: string, subject: Subject, names: readonly string[]): string | undefined {
  for (let from = 1; from < names.length; from += 1) {
    const orders = [[...names.slice(from), ...names.slice(0, from)], names.toReversed()];
    const found = orders.find((order) => lookUp(alias, subject, order));
    if (found) return found.map(quotedWhereOdd).join('.');
  }
  return undefined;
}

/** `peak_temperature.fast` -> `fast.peak_temperature`: the alias stands first. */
function turnedAddress(names: readonly string[], subjects: Subjects): string | undefined {
  for (const [alias, subject] of subjects) {
    if (!names.slice(1).includes(alias)) continue;
    const rest = names.filter((name) => name !== alias);
    const right = lookUp(alias, subject, rest) ? rest.map(quotedWhereOdd).join('.') : turnedNames(alias, subject, rest);
    if (right !== undefined) return `${quotedWhereOdd(alias)}.${right}`;
  }
  return undefined;
}

const SHOWN = 12;

function listed(names: readonly string[]): string {
  if (names.length === 0) return 'a run that has figures';
  if (names.length <= SHOWN) return oneOf(names);
  return `one of ${names.length} names, among them ${oneOf(names.slice(0, SHOWN), 'and')}`;
}
