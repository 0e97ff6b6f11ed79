import type { Expression } from './expression.ts';

/** Names of the functions that a formula calls, in the order in which they stand; a function called twice stands twice. */
export function callsIn(part: Expression): readonly string[] {
  switch (part.kind) {
    case 'unary':
      return callsIn(part.argument);
    case 'binary':
      return [...callsIn(part.left), ...callsIn(part.right)];
    case 'choice':
      return [part.test, part.yes, part.no].flatMap(callsIn);
    case 'call':
      return [part.name, ...part.arguments.flatMap(callsIn)];
    default:
      return [];
  }
}
