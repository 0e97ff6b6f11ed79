import type { Expression } from './expression.ts';
import { namesIn } from './names-in.ts';

/**
 * The names that a formula's value rests on where it is known which names are known: of `otherwise(x, y)` only x where all
 * of x is known, of `known(x) ? a : b` only the branch that is taken. Any other choice rests on both of its branches.
 */
export function namesUsed(part: Expression, isKnown: (name: string) => boolean): readonly string[] {
  const of = (some: readonly Expression[]): readonly string[] => some.flatMap((each) => namesUsed(each, isKnown));
  const allKnown = (each: Expression): boolean => namesIn(each).every(({ name }) => isKnown(name));
  switch (part.kind) {
    case 'name':
      return [part.name];
    case 'unary':
      return of([part.argument]);
    case 'binary':
      return of([part.left, part.right]);
    case 'choice': {
      const { test, yes, no } = part;
      if (test.kind !== 'call' || test.name !== 'known') return of([test, yes, no]);
      return of([test, allKnown(test) ? yes : no]);
    }
    case 'call': {
      const [first] = part.arguments;
      return part.name === 'otherwise' && allKnown(first) ? of([first]) : of(part.arguments);
    }
    default:
      return [];
  }
}
