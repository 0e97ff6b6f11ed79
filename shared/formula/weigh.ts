import { branchSlopes, type Writer } from './differentiate.ts';
import type { Slopes } from './instruction.ts';
import * as kernel from './kernels.ts';
import type { Planned } from './planned.ts';

/** A writer that can also form variances. */
interface VarianceWriter extends Writer {
  variance(slopes: Slopes): number;
}

/**
 * Two findings of one quantity, each weighted by the inverse of its variance, written to the buffer `value`. The weights
 * are taken as given: that they follow from the inputs too is of second order.
 */
export function weigh(value: number, a: Planned, b: Planned, writer: VarianceWriter): Slopes {
  const [va, vb, w] = [writer.variance(a.slopes), writer.variance(b.slopes), writer.fresh()];
  writer.emit({
    reads: [a.buffer, va, b.buffer, vb],
    writes: [w],
    link: (at) => {
      const [out, x, vx, y, vy] = [at(w), at(a.buffer), at(va), at(b.buffer), at(vb)];
      return (n) => kernel.weight(out, x, vx, y, vy, n);
    },
  });
  writer.emit({
    reads: [w, a.buffer, b.buffer],
    writes: [value],
    link: (at) => {
      const [out, x, p, q] = [at(value), at(w), at(a.buffer), at(b.buffer)];
      return (n) => kernel.blend(out, x, p, q, n);
    },
  });
  return branchSlopes(a.slopes, b.slopes, w, kernel.blendSlope, writer);
}
