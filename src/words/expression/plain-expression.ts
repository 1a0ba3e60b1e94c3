/** An expression less the blanks that mean nothing. */
export function plainExpression(expression: string): string {
  return expression.replaceAll(/\s+/g, ' ').trim();
}
