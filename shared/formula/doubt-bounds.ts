import type { Writer } from './differentiate.ts';
import { type BlockContext, type Slope, ZEROS } from './instruction.ts';
import type { Planned } from './planned.ts';
import type { Comparison } from './step.ts';

const NO_SLOPE: Slope = { buffer: ZEROS, scale: 0 };

/**
 * Where a side of a comparison is only known as a bound (">4000"), the answer stands if the bound settles it and is
 * unknown if not: "at least 4000" is over 10, but whether it is over 5000 nobody knows.
 */
export function doubtBounds(
  answer: number,
  operator: Comparison,
  [a, b]: readonly [Planned, Planned],
  bounds: ReadonlyMap<string, Int8Array>,
  uncertain: readonly { readonly name: string }[],
  context: BlockContext,
  writer: Writer,
): void {
  for (const name of new Set([...a.reach.keys(), ...b.reach.keys()])) {
    const marks = bounds.get(name);
    if (!marks) continue;
    const input = uncertain.findIndex((each) => each.name === name);
    const [x, y] = [a.slopes.get(input) ?? NO_SLOPE, b.slopes.get(input) ?? NO_SLOPE];
    const oneSided = x.scale === 0 || y.scale === 0;
    // Where derivatives are not formed, nothing is known of the direction and every bound is a doubt.
    const keeps = (side: Planned): boolean => side.reach.get(name) !== 'none';
    const monotone = input >= 0 && oneSided && keeps(a) && keeps(b);
    writer.emit({
      reads: [a.buffer, b.buffer, x.buffer, y.buffer, answer],
      writes: [],
      link: (at) => {
        const [out, left, right, dx, dy] = [at(answer), at(a.buffer), at(b.buffer), at(x.buffer), at(y.buffer)];
        return (n) => {
          for (let i = 0; i < n; i++) {
            const mark = marks[context.from + i];
            const slope = x.scale * dx[i] - y.scale * dy[i];
            if (mark === 0 || (monotone && slope === 0)) continue;
            const settled = monotone && settles(operator, left[i] - right[i], Math.sign(slope) * mark);
            if (!settled) out[i] = Number.NaN;
          }
        };
      },
    });
  }
}

/** Whether a comparison keeps its answer when the difference of its sides can only move in one direction. */
function settles(operator: Comparison, difference: number, direction: number): boolean {
  if (difference > 0) return direction > 0;
  if (difference < 0) return direction < 0;
  return operator === '>=' ? direction > 0 : operator === '<=' && direction < 0;
}
