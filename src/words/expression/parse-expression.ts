/** Text of an expression or condition → its tree, or what is wrong with it and where. */
import type { Condition, Expression } from './expression-tree.ts';
import { type GrammarRefusal, isGrammarRefusal, parseWithGrammar } from './grammar.ts';
import type { TextProblem } from './text-problem.ts';

const LONGEST = 1000;

/** An expression: addresses, quantities, `( )`, unary `-`, `* / + -`, `min max mean abs`. */
export function parseExpression(text: string): Expression | TextProblem {
  return parse(text, 'ExpressionText') as Expression | TextProblem;
}

/** A condition: expressions compared, joined by `not`, `and`, `or`. */
export function parseCondition(text: string): Condition | TextProblem {
  return parse(text, 'ConditionText') as Condition | TextProblem;
}

/** Tells a refusal from a tree. */
export function isTextProblem(result: object): result is TextProblem {
  return 'rule' in result;
}

type Rule = 'ExpressionText' | 'ConditionText';

function parse(text: string, rule: Rule): unknown {
  if (text.length > LONGEST) return refusal(text, LONGEST, `an expression of ${text.length} characters`, `at most ${LONGEST}`);
  if (text.trim() === '') return refusal(text, 0, 'nothing', example(rule), 'write what the number is');
  try {
    return parseWithGrammar(text, rule);
  } catch (thrown) {
    if (!isGrammarRefusal(thrown)) throw thrown;
    return explained(text, rule, thrown);
  }
}

function example(rule: Rule): string {
  return rule === 'ExpressionText' ? 'an address such as `fast.peak_temperature`' : 'a condition such as `fast.load_power < 5 W`';
}

function refusal(text: string, at: number, found: string, expected: string, remedy?: string): TextProblem {
  return {
    rule: 'expression-syntax',
    start: at,
    end: Math.min(at + 1, text.length),
    found,
    expected,
    ...(remedy ? { remedy } : {}),
  };
}

function explained(text: string, rule: Rule, thrown: GrammarRefusal): TextProblem {
  const at = thrown.location.start.offset;
  if (rule === 'ConditionText') {
    const unfinished = unfinishedCondition(text, at);
    if (unfinished) return unfinished;
  }
  const character = String.fromCodePoint(text.codePointAt(at) ?? 32);
  const found = at >= text.length ? 'the end of the expression' : `\`${character}\``;
  const sign = signBefore(text, at);
  if (sign) return refusal(text, at, found, `a blank on both sides of a binary \`${sign}\``, QUOTE_ODD_NAMES);
  return refusal(text, at, found, expectedInWords(thrown), remedyFor(text, at));
}

/** A condition that stops too early: no comparison in it, `within` without `of`, `between` without `and`. */
function unfinishedCondition(text: string, at: number): TextProblem | undefined {
  if (at < text.trimEnd().length) return undefined;
  const missing = /\swithin\s(?!.*\sof\s)/.test(text) ? 'of' : /\sbetween\s(?!.*\sand\s)/.test(text) ? 'and' : undefined;
  if (missing) return refusal(text, at, 'the end of the condition', missing === 'of' ? '`within … of …`' : '`between … and …`');
  if (isTextProblem(parseExpression(text))) return undefined;
  const found = 'an expression without a comparison';
  return { rule: 'expression-syntax', start: 0, end: text.length, found, expected: example('ConditionText') };
}

const QUOTE_ODD_NAMES = 'a name that holds other than letters, digits and `_` stands in quotes: `"aes-1t"`';

/** Names of the grammar's rules as they print. */
const SIGNS: ReadonlyMap<string, readonly string[]> = new Map([
  ['+ or -', ['`+`', '`-`']],
  ['* or /', ['`*`', '`/`']],
  ['a comparison (< <= > >=)', ['`<`', '`<=`', '`>`', '`>=`']],
]);

function expectedInWords(thrown: GrammarRefusal): string {
  const named = thrown.expected.filter(({ type }) => type === 'other').map(({ description }) => description ?? '');
  const things = [...new Set(named)].sort();
  const wanted = things.length > 1 ? things.filter((thing) => thing !== 'a blank') : things;
  const literals = thrown.expected.map(({ type, text }) => (type === 'literal' ? (text ?? '') : ''));
  const signs = [...new Set(literals.filter((sign) => /^([(),.]|within|between|of|and|or)$/.test(sign)))].sort();
  const all = [...wanted.flatMap((thing) => SIGNS.get(thing) ?? [thing]), ...signs.map((sign) => `\`${sign}\``)];
  if (all.length === 0) return 'the end of the expression';
  return all.length === 1 ? (all[0] as string) : `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`;
}

/** Signs that look right and are not, with what to write instead. */
const LOOKALIKES: ReadonlyMap<string, string> = new Map([
  ['−', 'write the minus as `-`'],
  ['–', 'write the minus as `-`'],
  ['—', 'write the minus as `-`'],
  ['×', 'write times as `*`'],
  ['·', 'write times as `*`'],
  ['÷', 'write the division as `/`'],
  ['≤', 'write `<=`'],
  ['≥', 'write `>=`'],
  ['=', 'no measured number equals another: write `within … of …`, or one of `<`, `<=`, `>`, `>=`'],
  ['“', 'write straight quotes: `"`'],
  ['”', 'write straight quotes: `"`'],
  ['‘', 'write straight double quotes: `"`'],
  ['’', 'write straight double quotes: `"`'],
  ["'", 'write double quotes: `"`'],
  ['&', 'write `and`'],
  ['|', 'write `or`'],
  ['±', 'a literal is exact: leave `±` and what follows out'],
]);

function remedyFor(text: string, at: number): string | undefined {
  const lookalike = LOOKALIKES.get(text[at] ?? '');
  if (lookalike) return lookalike;
  if (/^\d+,\d/.test(text.slice(at))) return 'write the decimal sign as a point';
  return undefined;
}

/** The `+` or `-` at an offset, or just before it, that lacks a blank on one side. */
function signBefore(text: string, at: number): string | undefined {
  if (/[-+]/.test(text[at] ?? '')) return text[at];
  return /[-+]$/.test(text.slice(0, at)) ? text[at - 1] : undefined;
}
