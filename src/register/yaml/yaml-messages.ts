/** Our words for what the YAML library complains of, by its error codes. */
import type { RuleId } from '../rules.ts';

export interface SyntaxProblem {
  readonly rule: RuleId;
  readonly found: string;
  readonly expected?: string;
  readonly remedy?: string;
}

const QUOTE = 'put the value in quotes';
const SYNTAX: Readonly<Record<string, Omit<SyntaxProblem, 'rule'>>> = {
  BLOCK_AS_IMPLICIT_KEY: { found: 'a deeper line follows a value', remedy: 'check the indentation of the line below' },
  MULTILINE_IMPLICIT_KEY: {
    found: 'this line has no colon, or the line below is indented too far',
    expected: 'a key, a colon, a blank and a value',
  },
  BAD_SCALAR_START: { found: 'a value cannot begin with this character', remedy: QUOTE },
  BAD_INDENT: {
    found: 'this line is indented otherwise than the lines it belongs to',
    remedy: 'indent all keys of one mapping alike',
  },
  BAD_DQ_ESCAPE: { found: 'a backslash in double quotes begins no known sign', remedy: 'use single quotes, or write `\\\\`' },
  BAD_ALIAS: { found: 'a value that begins with `*` refers to another place of the file', remedy: QUOTE },
  BAD_DIRECTIVE: { found: 'a line that begins with `%` is not a key', remedy: 'remove this line' },
  MULTIPLE_DOCS: { found: 'a second document begins here', remedy: 'remove this line' },
  MISSING_CHAR: {
    found: 'something is not closed, or a colon is missing',
    expected: 'a closing quote or bracket, or a colon after a key',
  },
  BLOCK_IN_FLOW: { found: 'a mapping begins inside brackets', remedy: 'write the list with one `- ` line for each item' },
  BAD_COLLECTION_TYPE: { found: 'a list and keys are mixed here', remedy: 'check the indentation' },
  KEY_OVER_1024_CHARS: { found: 'this key is longer than 1024 characters', remedy: 'check the quotes' },
  UNEXPECTED_TOKEN: {
    found: 'this does not fit here',
    expected: 'a line such as `title: My text`',
    remedy: 'check indentation, quotes and brackets',
  },
};

/** Complaints that share an error code with others and need other words. */
const SPECIAL: readonly { readonly code: string; readonly message: RegExp; readonly problem: SyntaxProblem }[] = [
  {
    code: 'MISSING_CHAR',
    message: /quote$/,
    problem: {
      rule: 'yaml-syntax',
      found: 'this quote is never closed, or on another line',
      remedy: 'close it on its line; a quote within the value is written twice in single quotes',
    },
  },
  {
    code: 'BAD_INDENT',
    message: /^Flow/,
    problem: { rule: 'yaml-syntax', found: 'a list in brackets is not closed on its line', remedy: 'close it with `]`' },
  },
];

/** The problem for one complaint of the library; codes without words of ours get general ones. `line` is the one complained of. */
export function syntaxProblem(code: string, message: string, line: string): SyntaxProblem {
  if (code === 'TAB_AS_INDENT')
    return { rule: 'tab-indent', found: 'a tab stands where a line is indented', remedy: 'indent with blanks' };
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && /:[ \t].*:(?:[ \t]|$)/.test(line))
    return { rule: 'yaml-syntax', found: 'there is a second `: ` on this line', remedy: QUOTE };
  const special = SPECIAL.find((each) => each.code === code && each.message.test(message));
  return special?.problem ?? { rule: 'yaml-syntax', ...(SYNTAX[code] ?? SYNTAX.UNEXPECTED_TOKEN!) };
}
