import type { Expression, Span } from './expression.ts';

/** The names in a formula, in the order in which they stand; functions are not among them. */
export function namesIn(part: Expression): readonly (Span & { readonly name: string })[] {
  switch (part.kind) {
    case 'name':
      return [part];
    case 'unary':
      return namesIn(part.argument);
    case 'binary':
      return [...namesIn(part.left), ...namesIn(part.right)];
    case 'choice':
      return [part.test, part.yes, part.no].flatMap(namesIn);
    case 'call':
      return part.arguments.flatMap(namesIn);
    default:
      return [];
  }
}
