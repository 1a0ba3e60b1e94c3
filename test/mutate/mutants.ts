/** The ways in which a file of code can be made slightly wrong, found in its syntax tree. */
import ts from 'typescript';

/** One wrong version of a file: the text from `start` to `end` is another. */
export interface Mutant {
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
  readonly before: string;
  readonly after: string;
}

type Change = readonly [node: { getStart(): number; getEnd(): number }, after: string];

/** Each comparison becomes its neighbour at the edge or its contrary; each sign, factor and connective its counterpart. */
const OPERATORS: Readonly<Partial<Record<ts.SyntaxKind, string>>> = {
  [ts.SyntaxKind.LessThanToken]: '<=',
  [ts.SyntaxKind.LessThanEqualsToken]: '<',
  [ts.SyntaxKind.GreaterThanToken]: '>=',
  [ts.SyntaxKind.GreaterThanEqualsToken]: '>',
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: '!==',
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: '===',
  [ts.SyntaxKind.AmpersandAmpersandToken]: '||',
  [ts.SyntaxKind.BarBarToken]: '&&',
  [ts.SyntaxKind.PlusToken]: '-',
  [ts.SyntaxKind.MinusToken]: '+',
  [ts.SyntaxKind.AsteriskToken]: '/',
  [ts.SyntaxKind.SlashToken]: '*',
};

/** All mutants of a file, in order. Types, imports and the words of messages are left as they are. */
export function mutantsOf(text: string): Mutant[] {
  const file = ts.createSourceFile('file.ts', text, ts.ScriptTarget.Latest, true);
  const mutants: Mutant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node))
      return;
    for (const [changed, after] of changesOf(node)) {
      const [start, end] = [changed.getStart(), changed.getEnd()];
      const { line, character } = file.getLineAndCharacterOfPosition(start);
      mutants.push({ start, end, line: line + 1, column: character + 1, before: text.slice(start, end), after });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return mutants.sort((a, b) => a.start - b.start || a.end - b.end);
}

/** The text of the file with its mistake. */
export function mutated(text: string, { start, end, after }: Mutant): string {
  return text.slice(0, start) + after + text.slice(end);
}

function changesOf(node: ts.Node): Change[] {
  if (ts.isBinaryExpression(node)) return operatorChanges(node);
  if (ts.isNumericLiteral(node)) return [[node, other(node)]];
  if (node.kind === ts.SyntaxKind.TrueKeyword) return [[node, 'false']];
  if (node.kind === ts.SyntaxKind.FalseKeyword) return [[node, 'true']];
  if (ts.isIfStatement(node)) return [[node.expression, negated(node.expression)]];
  if (ts.isConditionalExpression(node)) return [[node.condition, negated(node.condition)]];
  if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken) return [[node, node.operand.getText()]];
  if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken && !ts.isNumericLiteral(node.operand))
    return [[node, node.operand.getText()]];
  if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression)) return [[node, ';']];
  return [];
}

function operatorChanges({ operatorToken, left, right }: ts.BinaryExpression): Change[] {
  const after = OPERATORS[operatorToken.kind];
  // A `+` that joins text has no counterpart.
  const joins = [left, right].some((side) => ts.isStringLiteralLike(side) || ts.isTemplateExpression(side));
  return after === undefined || joins ? [] : [[operatorToken, after]];
}

/** The next whole number; of others one a tenth larger, so that a limit moves by more than any tolerance. */
function other(node: ts.NumericLiteral): string {
  const value = Number(node.text);
  // Where one more is the same number, as of 1e140, a tenth is more.
  return Number.isInteger(value) && value + 1 !== value ? String(value + 1) : String(value * 1.1);
}

function negated(condition: ts.Expression): string {
  return `!(${condition.getText()})`;
}
