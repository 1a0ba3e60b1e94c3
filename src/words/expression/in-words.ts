/** Expressions, figures and facts in words, for readers: "load power of fast less that of rated". Addresses themselves stand in code type. */
import { definitionOf } from '../../figures/catalogue.ts';
import type { Figure } from '../../figures/figure.ts';
import { CONDITIONS, MEASURED_CONDITIONS } from '../../register/values/condition-kinds.ts';
import type { HeldBy } from '../written.ts';
import type { Address, Call, Expression, NamePart, Operation } from './expression-tree.ts';
import { nameInWords } from './name-in-words.ts';
import { isTextProblem, parseExpression } from './parse-expression.ts';

export { nameInWords };

const FACTS: ReadonlyMap<string, string> = new Map([
  ['setting.clock', 'clock setting'],
  ['setting.voltage_offset', 'voltage offset'],
  ...MEASURED_CONDITIONS.map((name) => [name, CONDITIONS[name].called] as const),
  ['device.rated_clock', 'rated clock'],
  ['device.supply', 'rated supply'],
  ['device.throttle_at', 'throttle limit'],
  ['repeats', 'number of repeats'],
  ['tried', 'number of settings tried'],
  ['outcome', 'number of settings tried'],
]);

/** A setting, condition or rating by its address without alias. */
export function factInWords(key: string): string {
  const head = [...FACTS.keys()].find((fact) => key === fact || key.startsWith(`${fact}.`));
  if (head === undefined) return nameInWords(key.replace(/^setting\./, '').replaceAll('.', ' '));
  const detail = key.slice(head.length + 1);
  return withDetail(FACTS.get(head) as string, nameInWords(detail));
}

/** A figure by its name in the catalogue, with what tells it from others of that name; '' for nothing. */
export function figureInWords(name: string, detail: string): string {
  return withDetail(definitionOf(name)?.label ?? nameInWords(name), detail);
}

/** What tells a figure from others of its name, in words: a test or spot by its title, where `of` says which it is. */
export function detailInWords(detail: string, of: Figure['of'] = {}): string {
  const name = detail.replaceAll('"', '');
  if (of.test === name && typeof of.title === 'string') return of.title;
  if (of.spot === name && typeof of.spot_title === 'string') return of.spot_title;
  return nameInWords(name);
}

/** What holds a number: a figure with its details, or a fact. */
export function heldInWords({ address, figure }: Pick<HeldBy, 'address' | 'figure'>, of?: Figure['of']): string {
  if (figure === undefined) return factInWords(address);
  const details = address.slice(figure.length + 1).match(/"[^"]*"|[^.]+/g) ?? [];
  return figureInWords(figure, details.map((detail) => detailInWords(detail, of)).join(', '));
}

function withDetail(label: string, detail: string): string {
  return detail === '' ? label : `${label} (${detail})`;
}

/** Titles by alias: what readers know a run or comparison by. */
export type Titles = ReadonlyMap<string, string>;

/** An expression of a note with these aliases; '' for a condition or what cannot be read. */
export function expressionInWords(expression: string, aliases: Titles): string {
  const tree = parseExpression(expression);
  return isTextProblem(tree) ? '' : words(tree, aliases);
}

const OPERATORS: Readonly<Record<Operation['operator'], string>> = { '+': 'plus', '-': 'less', '*': 'times', '/': 'over' };
const CALLS: Readonly<Record<Call['name'], string>> = {
  min: 'least of',
  max: 'greatest of',
  mean: 'mean of',
  abs: 'size of',
  count: 'number of',
  kinds: 'number of different',
  same: 'what is the same in',
  sum: 'sum of',
};

function words(tree: Expression, aliases: Titles): string {
  switch (tree.kind) {
    case 'address':
      return ofAlias(subjectOf(tree, aliases));
    case 'literal':
      return tree.unit === null ? tree.number : `${tree.number}\u00a0${tree.unit.text}`;
    case 'negation':
      return `minus ${part(tree.operand, aliases)}`;
    case 'operation':
      return operation(tree, aliases);
    case 'call':
      return `${CALLS[tree.name]} ${tree.operands.map((operand) => part(operand, aliases)).join(', ')}`;
  }
}

function operation({ operator, left, right }: Operation, aliases: Titles): string {
  const [first, second] = [left, right].map((side) => (side.kind === 'address' ? subjectOf(side, aliases) : undefined));
  const same = first !== undefined && second !== undefined && first.what === second.what && second.alias !== '';
  return `${part(left, aliases)} ${OPERATORS[operator]} ${same ? `that of ${second.alias}` : part(right, aliases)}`;
}

function part(tree: Expression, aliases: Titles): string {
  return tree.kind === 'operation' ? `(${words(tree, aliases)})` : words(tree, aliases);
}

interface Named {
  readonly what: string;
  /** '' where it is left out. */
  readonly alias: string;
}

function ofAlias({ what, alias }: Named): string {
  return alias === '' ? what : `${what} of ${alias}`;
}

function subjectOf({ parts }: Address, aliases: Titles): Named {
  const [first, ...rest] = parts as [NamePart, ...NamePart[]];
  if (first.group !== undefined && rest.length > 0)
    return {
      what: whatOf(
        rest.map(({ name }) => name),
        aliases,
      ),
      alias: groupInWords(first.group, aliases),
    };
  const named = rest.length > 0 && aliases.has(first.name);
  return {
    what: whatOf(
      (named ? rest : parts).map(({ name }) => name),
      aliases,
    ),
    alias: named ? (aliases.get(first.name) ?? '') : '',
  };
}

function groupInWords(group: NonNullable<NamePart['group']>, aliases: Titles): string {
  return group === 'every' ? 'every run' : group.map((alias) => aliases.get(alias) ?? nameInWords(alias)).join(', ');
}

/** The longest beginning that the catalogue knows is the figure, the rest its detail. */
function whatOf(names: readonly string[], aliases: Titles): string {
  for (let length = names.length; length > 0; length -= 1) {
    const name = names.slice(0, length).join('.');
    if (definitionOf(name))
      return figureInWords(
        name,
        names
          .slice(length)
          .map((each) => aliases.get(each) ?? nameInWords(each))
          .join(', '),
      );
  }
  return factInWords(names.join('.'));
}
