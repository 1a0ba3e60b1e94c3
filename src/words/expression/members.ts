/**
 * Groups in expressions: `*.peak_temperature` for every run of the note, `[rated fast].peak_temperature` for those of a list,
 * `fast.score.*` for every test, spot, channel or phase. A tree with groups becomes one tree for each member.
 */
import { isPlainName, type Subjects } from './address.ts';
import type { Address, Condition, Expression, NamePart } from './expression-tree.ts';
import type { TextProblem } from './text-problem.ts';

/** More members than this are a mistake, not a sentence. */
const MOST = 1000;

/** All addresses of a tree, in the order of the text. */
export function addressesIn(tree: Expression | Condition): Address[] {
  switch (tree.kind) {
    case 'address':
      return [tree];
    case 'literal':
      return [];
    case 'negation':
    case 'not':
    case 'quantified':
      return addressesIn(tree.operand);
    case 'call':
      return tree.operands.flatMap(addressesIn);
    case 'within':
      return [tree.left, tree.tolerance, tree.of].flatMap(addressesIn);
    case 'between':
      return [tree.left, tree.from, tree.to].flatMap(addressesIn);
    case 'extreme':
      return [tree.left, tree.among].flatMap(addressesIn);
    default:
      return [tree.left, tree.right].flatMap(addressesIn);
  }
}

/** The first group that stands in a tree, or undefined. */
export function groupIn(tree: Expression | Condition): Address | undefined {
  return addressesIn(tree).find(isGroup);
}

function isGroup({ parts }: Address): boolean {
  return parts.some(({ group }) => group !== undefined);
}

/**
 * The tree once for each member of its groups, in the order of the front matter and of the run's figures. Groups that are written alike
 * stand for the same member: `all *.peak_temperature < *.device.throttle_at` compares each run with its own limit. A tree without a
 * group is its own only member. A problem where a group has no member or names an unknown alias.
 */
export function membersOf<T extends Expression | Condition>(tree: T, subjects: Subjects): readonly T[] | TextProblem {
  const group = groupIn(tree);
  if (!group) return [tree];
  const at = group.parts.findIndex((part) => part.group !== undefined);
  const part = group.parts[at] as NamePart;
  const names = at === 0 ? aliasesOf(part, subjects) : detailsOf(group, at, subjects);
  if ('rule' in names) return names;
  const members: T[] = [];
  for (const name of names) {
    const found = membersOf(withName(tree, part, at === 0, name), subjects);
    if ('rule' in found) return found;
    members.push(...found);
    if (members.length > MOST) return tooMany(group);
  }
  return members;
}

function aliasesOf({ group, start, end }: NamePart, subjects: Subjects): readonly string[] | TextProblem {
  if (group === 'every') {
    const runs = [...subjects].filter(([, { kind }]) => kind === 'run').map(([alias]) => alias);
    return runs.length > 0 ? runs : problem({ start, end }, 'every run of a note that names none', 'runs in the front matter');
  }
  const unknown = (group ?? []).find((alias) => !subjects.has(alias));
  if (unknown === undefined) return group ?? [];
  return {
    rule: 'unknown-alias',
    start,
    end,
    found: `unknown alias \`${unknown}\``,
    expected: `aliases of this note: ${[...subjects.keys()].join(', ')}`,
  };
}

/** The names that stand in the place of a `*` behind others: tests, spots, channels, phases, or the aliases of a comparison. */
function detailsOf({ parts, start, end }: Address, at: number, subjects: Subjects): readonly string[] | TextProblem {
  const alias = (parts[0] as NamePart).name;
  const subject = subjects.get(alias);
  const before = parts.slice(1, at).map(({ name }) => name);
  const keys = subject ? [...subject.figures.keys(), ...subject.facts.keys()] : [];
  const found = keys.flatMap((key) => {
    const names = namesIn(key);
    const fits = names.length === at && before.every((name, index) => names[index] === name);
    return fits ? [names[at - 1] as string] : [];
  });
  if (found.length > 0) return [...new Set(found)];
  return problem({ start, end }, `nothing that \`${alias}.${before.join('.')}.*\` could stand for`, 'a figure that has several');
}

/** The names of a key: `score."ledger-sort"` is two. */
function namesIn(key: string): string[] {
  return [...key.matchAll(/"([^"]+)"|[^."]+/g)].map(([whole, quoted]) => quoted ?? whole);
}

/** The tree with one member in the place of a group, wherever that group is written alike. */
function withName<T extends Expression | Condition>(tree: T, part: NamePart, first: boolean, name: string): T {
  const replaced = (address: Address): Address => ({
    ...address,
    parts: address.parts.map((each, index) => {
      const same = each.group !== undefined && each.name === part.name && (index === 0) === first;
      return same ? { name, quoted: !isPlainName(name), start: each.start, end: each.end } : each;
    }),
  });
  return mapAddresses(tree, replaced);
}

/** A copy of a tree with each address replaced. */
function mapAddresses<T extends Expression | Condition>(tree: T, replace: (address: Address) => Address): T {
  const within = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(within);
    if (typeof value !== 'object' || value === null || !('kind' in value)) return value;
    if (value.kind === 'address') return replace(value as Address);
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, within(each)]));
  };
  return within(tree) as T;
}

function tooMany(span: Address): TextProblem {
  return problem(span, `a group of more than ${MOST} members`, 'a group that a sentence can speak of');
}

function problem({ start, end }: { start: number; end: number }, found: string, expected: string): TextProblem {
  return { rule: 'expression-syntax', start, end, found, expected };
}
