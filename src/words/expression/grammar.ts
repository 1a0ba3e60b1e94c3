/**
 * The grammar of expressions and conditions, compiled once when this module loads. Names of rules in quotes are what an
 * author reads after "expected".
 */
import peggy from 'peggy';

const GRAMMAR = String.raw`
{{
  const fold = (head, tail, make) => tail.reduce(make, head);
}}

ExpressionText = _ @Sum _ !.
ConditionText = _ @Either _ !.

Either = head:Both tail:(__ "or" __ @Both)* {
  return fold(head, tail, (left, right) => ({ kind: 'or', left, right, start: left.start, end: right.end }));
}
Both = head:Inverse tail:(__ "and" __ @Inverse)* {
  return fold(head, tail, (left, right) => ({ kind: 'and', left, right, start: left.start, end: right.end }));
}
Inverse
  = "not" AfterWord _ operand:Inverse { return { kind: 'not', operand, ...range() }; }
  / Quantified
  / Comparison
  / "(" _ @Either _ ")"
Quantified = quantifier:$("all" / "any" / "none") __ operand:(Comparison / "(" _ @Either _ ")") {
  return { kind: 'quantified', quantifier, operand, ...range() };
}
Comparison
  = left:Sum comparison:(Ordering / Within / Between / Extreme) { return { ...comparison, left, ...range() }; }
Ordering = _ operator:Relation _ right:Sum { return { kind: 'ordering', operator, right }; }
Within = __ "within" AfterWord _ tolerance:Sum __ "of" AfterWord _ of:Sum { return { kind: 'within', tolerance, of }; }
Between = __ "between" AfterWord _ from:Sum __ "and" AfterWord _ to:Sum { return { kind: 'between', from, to }; }
Extreme = __ "is" AfterWord _ extreme:$("largest" / "smallest") __ "of" AfterWord _ among:Sum { return { kind: 'extreme', extreme, among }; }
Relation "a comparison (< <= > >=)" = $("<=" / "<" / ">=" / ">")

Sum = head:Product tail:(__ Sign __ Product)* {
  return fold(head, tail, (left, [, operator, , right]) => ({ kind: 'operation', operator, left, right, start: left.start, end: right.end }));
}
Sign "+ or -" = [+-]
Product = head:Unary tail:(_ Times _ Unary)* {
  return fold(head, tail, (left, [, operator, , right]) => ({ kind: 'operation', operator, left, right, start: left.start, end: right.end }));
}
Times "* or /" = [*/]
Unary
  = Literal
  / "-" _ operand:Unary { return { kind: 'negation', operand, ...range() }; }
  / Primary
Primary
  = "(" _ inner:Sum _ ")" { return { ...inner, ...range() }; }
  / Call
  / Address

Call = name:Function "(" _ head:Sum tail:(_ "," _ @Sum)* _ ")" {
  return { kind: 'call', name, operands: [head, ...tail], ...range() };
}
Function = @$("min" / "max" / "mean" / "abs" / "count" / "kinds" / "same" / "sum") &"("

Literal = number:Number unit:(" "* @Unit)? { return { kind: 'literal', number, unit, ...range() }; }
Number "a number" = $("-"? [0-9]+ ("." [0-9]+)? ([eE] [+-]? [0-9]+)? ![0-9,])
Unit "a unit" = !Word text:$(UnitWord ([/·*] UnitWord)*) { return { text, ...range() }; }
UnitWord = [A-Za-zµμΩ°℃%]+ [²³]? ![A-Za-z0-9_.("]

Address = head:(Star / List / FirstName) tail:("." @(Star / LaterName))* { return { kind: 'address', parts: [head, ...tail], ...range() }; }
FirstName "an address" = !Word name:$([A-Za-z_] NameCharacter*) { return { name, quoted: false, ...range() }; } / Quoted
Star = "*" { return { name: '*', quoted: false, group: 'every', ...range() }; }
List = "[" _ head:ListName tail:(__ @ListName)* _ "]" { return { name: text(), quoted: false, group: [head, ...tail], ...range() }; }
ListName "an alias" = $(NameCharacter+) / '"' @$([^"\r\n]+) '"'
LaterName "a name" = name:$(NameCharacter+) { return { name, quoted: false, ...range() }; } / Quoted
Quoted = '"' name:$([^"\r\n]+) '"' { return { name, quoted: true, ...range() }; }
NameCharacter = [A-Za-z0-9_]

Word = ("within" / "between" / "of" / "and" / "or" / "not" / "is") AfterWord
AfterWord = !(NameCharacter / ".")
_ = [ \t]*
__ "a blank" = [ \t]+
`;

const parser = peggy.generate(GRAMMAR, { allowedStartRules: ['ExpressionText', 'ConditionText'] });

/** The generated parser's own parse: a tree, or peggy's SyntaxError thrown. `parse.ts` turns that into a problem. */
export function parseWithGrammar(text: string, rule: 'ExpressionText' | 'ConditionText'): unknown {
  return parser.parse(text, { startRule: rule });
}

/** What peggy throws on text outside the grammar. */
export interface GrammarRefusal {
  readonly expected: readonly { readonly type: string; readonly description?: string; readonly text?: string }[];
  readonly location: { readonly start: { readonly offset: number } };
}

/** Whether a thrown value is the parser's refusal, not a fault. */
export function isGrammarRefusal(thrown: unknown): thrown is GrammarRefusal {
  return thrown instanceof parser.SyntaxError;
}
