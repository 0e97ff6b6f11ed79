import type { Step } from './step.ts';

/** Steps in the making: folds constants, stores equal steps once. */
export class StepList {
  readonly steps: Step[] = [];
  readonly #known = new Map<string, number>();

  /** The number of the step, an earlier one where it is the same. */
  put(step: Step): number {
    const key = keyOf(step);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.steps.push(step) - 1);
    return this.steps.length - 1;
  }

  constant(value: number): number {
    return this.put({ op: 'constant', args: [], value });
  }

  /** Value of a constant step, undefined for any other. */
  valueOf(step: number): number | undefined {
    const found = this.steps[step];
    return found.op === 'constant' ? found.value : undefined;
  }

  affine(arg: number, factor: number, offset = 0): number {
    if (factor === 1 && offset === 0) return arg;
    const found = this.steps[arg];
    if (found.op === 'constant') return this.constant(found.value * factor + offset);
    if (found.op === 'affine') return this.affine(found.args[0], found.factor * factor, found.offset * factor + offset);
    return this.put({ op: 'affine', args: [arg], factor, offset });
  }

  add(a: number, b: number): number {
    const [x, y] = [this.valueOf(a), this.valueOf(b)];
    if (y !== undefined) return this.affine(a, 1, y);
    if (x !== undefined) return this.affine(b, 1, x);
    return this.put({ op: 'add', args: [a, b] });
  }

  subtract(a: number, b: number): number {
    const [x, y] = [this.valueOf(a), this.valueOf(b)];
    if (y !== undefined) return this.affine(a, 1, -y);
    if (x !== undefined) return this.affine(b, -1, x);
    return this.put({ op: 'subtract', args: [a, b] });
  }

  multiply(a: number, b: number): number {
    const [x, y] = [this.valueOf(a), this.valueOf(b)];
    if (y !== undefined) return this.affine(a, y);
    if (x !== undefined) return this.affine(b, x);
    return this.put({ op: 'multiply', args: [a, b] });
  }

  divide(a: number, b: number): number {
    const y = this.valueOf(b);
    if (y !== undefined) return y === 0 ? this.constant(Number.NaN) : this.affine(a, 1 / y);
    return this.put({ op: 'divide', args: [a, b] });
  }

  apply(fn: Extract<Step, { op: 'apply' }>['function'], args: readonly number[]): number {
    return this.put({ op: 'apply', function: fn, args });
  }
}

function keyOf(step: Step): string {
  const { op, args } = step;
  const base = `${op}|${args.join(',')}`;
  switch (step.op) {
    case 'input':
      return `${base}|${step.name}`;
    case 'constant':
      return `${base}|${Object.is(step.value, -0) ? '-0' : step.value}`;
    case 'affine':
      return `${base}|${step.factor}|${step.offset}`;
    case 'compare':
      return `${base}|${step.operator}`;
    case 'text-is':
      return `${base}|${step.name}|${step.text}`;
    case 'apply':
      return `${base}|${step.function.key}`;
    case 'group':
      return `${base}|${step.statistic}|${step.by.join('\u0000')}`;
    default:
      return base;
  }
}
