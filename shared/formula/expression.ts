/** Where a part of a formula stands: offsets into its text, `to` excluded. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export type BinaryOperator = '+' | '-' | '*' | '/' | '%' | '**' | '<' | '<=' | '>' | '>=' | '==' | '!=' | '&&' | '||';

/** A formula as a tree of our own: plain data, apart from whoever parsed it and from however it is evaluated. */
export type Expression =
  | (Span & { readonly kind: 'number'; readonly value: number })
  | (Span & { readonly kind: 'text'; readonly value: string })
  | (Span & { readonly kind: 'name'; readonly name: string })
  | (Span & { readonly kind: 'unary'; readonly operator: '-' | '+' | '!'; readonly argument: Expression })
  | (Span & {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      /** Where the operator itself stands. */
      readonly at: Span;
      readonly left: Expression;
      readonly right: Expression;
    })
  | (Span & { readonly kind: 'choice'; readonly test: Expression; readonly yes: Expression; readonly no: Expression })
  | (Span & {
      readonly kind: 'call';
      readonly name: string;
      readonly at: Span;
      readonly arguments: readonly Expression[];
    });
