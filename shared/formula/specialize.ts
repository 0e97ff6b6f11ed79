import type { Program } from './program.ts';
import type { Step } from './step.ts';
import { StepList } from './step-list.ts';

/**
 * The program for inputs of which some are unknown in every row: what can only be unknown is left out, and a choice
 * that is thereby made is made once instead of in every row. Most readings have no wet O2 and no second CO2.
 */
export function specialize({ steps, outputs }: Program, absent: ReadonlySet<string>): Program {
  if (absent.size === 0) return { steps, outputs };
  const list = new StepList();
  const unknown = list.constant(Number.NaN);
  const place: number[] = [];
  for (const step of steps)
    place.push(
      put(
        step,
        step.args.map((arg) => place[arg]),
      ),
    );
  return {
    steps: list.steps,
    outputs: new Map([...outputs].map(([name, { step, unit }]) => [name, { step: place[step], unit }])),
  };

  function put(step: Step, args: readonly number[]): number {
    const [a, b, c] = args;
    const isUnknown = (arg: number): boolean => arg === unknown;
    switch (step.op) {
      case 'input':
      case 'text-is':
        return absent.has(step.name) ? unknown : list.put(step);
      case 'constant':
        return list.put(step);
      case 'known':
        return isUnknown(a) ? list.constant(0) : list.put({ op: 'known', args: [a] });
      case 'otherwise':
      case 'weigh':
        if (isUnknown(a)) return b;
        return isUnknown(b) ? a : list.put({ op: step.op, args: [a, b] });
      case 'choose': {
        const test = list.valueOf(a);
        if (test === 1) return b;
        if (test === 0) return c;
        return isUnknown(a) ? unknown : list.put({ op: 'choose', args: [a, b, c] });
      }
      case 'and':
      case 'or':
        return connect(step.op, a, b);
      case 'group':
        return list.put({ ...step, args });
      default:
        return args.some(isUnknown) ? unknown : arithmetic(step, args);
    }
  }

  /** Both sides settled, or one that settles it: false an "and", true an "or". */
  function connect(op: 'and' | 'or', a: number, b: number): number {
    const [x, y] = [list.valueOf(a), list.valueOf(b)];
    const decides = op === 'and' ? 0 : 1;
    if (x === decides || y === decides) return list.constant(decides);
    if (x !== undefined && y !== undefined) return Number.isNaN(x + y) ? unknown : list.constant(1 - decides);
    return list.put({ op, args: [a, b] });
  }

  function arithmetic(step: Step, args: readonly number[]): number {
    const [a, b] = args;
    switch (step.op) {
      case 'affine':
        return list.affine(a, step.factor, step.offset);
      case 'add':
        return list.add(a, b);
      case 'subtract':
        return list.subtract(a, b);
      case 'multiply':
        return list.multiply(a, b);
      case 'divide':
        return list.divide(a, b);
      case 'apply':
        return list.apply(step.function, args);
      case 'compare':
        return list.put({ op: 'compare', operator: step.operator, args: [a, b] });
      default:
        return list.put({ op: 'not', args: [a] });
    }
  }
}
