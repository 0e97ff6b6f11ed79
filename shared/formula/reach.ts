import type { Planned, Reach, Way } from './planned.ts';
import type { NumericFunction, Step } from './step.ts';

/** @param alone of an input that comes by one argument; @param together of one that comes by several */
function reachBy(
  args: readonly Planned[],
  alone: (way: Way, position: number) => Way,
  together: (ways: readonly (Way | undefined)[]) => Way,
): Reach {
  const names = new Set(args.flatMap(({ reach }) => [...reach.keys()]));
  return new Map(
    [...names].map((name) => {
      const ways = args.map(({ reach }) => reach.get(name));
      const [position, another] = [ways.findIndex(Boolean), ways.findLastIndex(Boolean)];
      return [name, position === another ? alone(ways[position] as Way, position) : together(ways)];
    }),
  );
}

const FLIPPED: Readonly<Record<Way, Way>> = { up: 'down', down: 'up', one: 'one', none: 'none' };
const flipped = (way: Way): Way => FLIPPED[way];
/** Through a factor of unknown sign that is the same whatever the input is. */
const either = (way: Way): Way => (way === 'none' ? 'none' : 'one');

/** Of parts that add up, or of which a row takes one: a direction only where all have it. */
function agreed(ways: readonly (Way | undefined)[]): Way {
  const [first, ...others] = ways.filter((way) => way !== undefined);
  return (first === 'up' || first === 'down') && others.every((way) => way === first) ? first : 'none';
}

type Operator = Extract<
  Step,
  { op: 'affine' | 'add' | 'subtract' | 'multiply' | 'divide' | 'choose' | 'otherwise' | 'weigh' }
>;

/** Which inputs reach an operation and how it moves with each, and whether it is never negative, by those of its arguments. */
export function reachOf(step: Operator, args: readonly Planned[]): Pick<Planned, 'reach' | 'isNeverNegative'> {
  const [a, b, c] = args;
  const all = args.every(({ isNeverNegative }) => isNeverNegative);
  switch (step.op) {
    case 'affine': {
      const { factor, offset } = step;
      const reach = reachBy(args, factor < 0 ? flipped : (way) => way, agreed);
      return { reach, isNeverNegative: all && factor >= 0 && offset >= 0 };
    }
    case 'subtract':
      return { reach: reachOfDifference(a, b), isNeverNegative: false };
    case 'multiply':
      return { reach: reachOfProduct(a, b), isNeverNegative: all };
    case 'divide':
      return { reach: reachOfQuotient(a, b), isNeverNegative: all };
    case 'choose':
      return { reach: reachOfParts(args), isNeverNegative: b.isNeverNegative && c.isNeverNegative };
    case 'weigh':
      // Its weights go with the uncertainties, and these with the inputs.
      return { reach: reachBy(args, none, none), isNeverNegative: all };
    default:
      return { reach: reachOfParts(args), isNeverNegative: all };
  }
}

/** The same of a function of numbers. */
export function reachOfFunction(
  args: readonly Planned[],
  { monotone, monotoneFromZero, neverNegative }: NumericFunction,
): Pick<Planned, 'reach' | 'isNeverNegative'> {
  const signs = args.map(({ isNeverNegative }) => isNeverNegative);
  const isFromZero = monotoneFromZero === true && signs.every(Boolean);
  const alone = (way: Way, position: number): Way => (monotone[position] ? way : isFromZero ? either(way) : 'none');
  return { reach: reachBy(args, alone, none), isNeverNegative: neverNegative?.(signs) ?? false };
}

const none = (): Way => 'none';

/** Of a sum, or of branches of which each row takes one. */
const reachOfParts = (args: readonly Planned[]): Reach => reachBy(args, (way) => way, agreed);

const reachOfDifference = (a: Planned, b: Planned): Reach =>
  reachBy(
    [a, b],
    (way, position) => (position === 0 ? way : flipped(way)),
    ([x, y]) => agreed([x, y && flipped(y)]),
  );

const reachOfProduct = (a: Planned, b: Planned): Reach =>
  reachBy(
    [a, b],
    (way, position) => ([b, a][position].isNeverNegative ? way : either(way)),
    (ways) => (a.isNeverNegative && b.isNeverNegative ? agreed(ways) : 'none'),
  );

/** A divisor that may pass 0 keeps no direction. */
const reachOfQuotient = (a: Planned, b: Planned): Reach =>
  reachBy(
    [a, b],
    (way, position) => {
      if (position === 0) return b.isNeverNegative ? way : either(way);
      if (!b.isNeverNegative) return 'none';
      return a.isNeverNegative ? flipped(way) : either(way);
    },
    ([x, y]) => (a.isNeverNegative && b.isNeverNegative ? agreed([x, y && flipped(y)]) : 'none'),
  );
