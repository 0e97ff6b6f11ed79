import { BLOCK_ROWS } from './block-rows.ts';
import type { Instruction } from './instruction.ts';
import type { Plan } from './plan.ts';

/** Buffers are handed out along the passes and taken back after the last pass that reads them. */
export function linkPlan(plan: Plan): ((n: number) => void)[] {
  const arrays: Float64Array[] = [];
  const place = new Map<number, Float64Array>();
  for (const [id, value] of plan.constants) place.set(id, new Float64Array(BLOCK_ROWS).fill(value));
  const lastRead = new Map<number, number>();
  plan.instructions.forEach(({ reads }, index) => {
    for (const id of reads) lastRead.set(id, index);
  });
  const at = (id: number): Float64Array => place.get(id) as Float64Array;
  return plan.instructions.map((instruction: Instruction, index) => {
    for (const id of instruction.writes) place.set(id, arrays.pop() ?? new Float64Array(BLOCK_ROWS));
    const pass = instruction.link(at);
    for (const id of new Set([...instruction.reads, ...instruction.writes]))
      if (!plan.constants.has(id) && (lastRead.get(id) ?? -1) <= index) arrays.push(at(id));
    return pass;
  });
}
