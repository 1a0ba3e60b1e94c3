/** What the grammar makes of an expression or condition. Offsets are UTF-16 units from the start of its text, `end` exclusive. */

export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface NamePart extends Span {
  readonly name: string;
  readonly quoted: boolean;
  /** Where the part stands for several names: `*` for every one that there is, or the aliases of a list `[rated fast]`. */
  readonly group?: 'every' | readonly string[];
}

export interface Address extends Span {
  readonly kind: 'address';
  readonly parts: readonly NamePart[];
}

/** A number with its unit as written: `71 °C`, `0.05`. */
export interface Literal extends Span {
  readonly kind: 'literal';
  readonly number: string;
  readonly unit: (Span & { readonly text: string }) | null;
}

export interface Negation extends Span {
  readonly kind: 'negation';
  readonly operand: Expression;
}

export interface Operation extends Span {
  readonly kind: 'operation';
  readonly operator: '+' | '-' | '*' | '/';
  readonly left: Expression;
  readonly right: Expression;
}

export interface Call extends Span {
  readonly kind: 'call';
  readonly name: 'min' | 'max' | 'mean' | 'abs' | 'count' | 'kinds' | 'same' | 'sum';
  readonly operands: readonly Expression[];
}

export type Expression = Address | Literal | Negation | Operation | Call;

export interface Ordering extends Span {
  readonly kind: 'ordering';
  readonly operator: '<' | '<=' | '>' | '>=';
  readonly left: Expression;
  readonly right: Expression;
}

/** `x within a of y`. */
export interface Within extends Span {
  readonly kind: 'within';
  readonly left: Expression;
  readonly tolerance: Expression;
  readonly of: Expression;
}

/** `x between a and b`, both ends included. */
export interface Between extends Span {
  readonly kind: 'between';
  readonly left: Expression;
  readonly from: Expression;
  readonly to: Expression;
}

/** `x is largest of group`: above every other of the group. */
export interface Extreme extends Span {
  readonly kind: 'extreme';
  readonly extreme: 'largest' | 'smallest';
  readonly left: Expression;
  readonly among: Expression;
}

/** `all *.peak_temperature < 85 °C`: the comparison for every member of its groups, for one at least, or for none. */
export interface Quantified extends Span {
  readonly kind: 'quantified';
  readonly quantifier: 'all' | 'any' | 'none';
  readonly operand: Condition;
}

export interface Not extends Span {
  readonly kind: 'not';
  readonly operand: Condition;
}

export interface Junction extends Span {
  readonly kind: 'and' | 'or';
  readonly left: Condition;
  readonly right: Condition;
}

export type Comparison = Ordering | Within | Between;
export type Condition = Comparison | Extreme | Quantified | Not | Junction;
