import { type FleetProgram, STEP } from './fleet-program.ts';
import type { Spread } from './spread.ts';

/** How a step makes a new level: x' = keep·x + value − share·(v + bias) − offsetShare·offset + N(0, variance). */
export interface Blend {
  readonly keep: number;
  readonly value: number;
  readonly share: number;
  readonly offsetShare: number;
  readonly variance: number;
}

export function blendOf(program: FleetProgram, step: number, spread: Spread): Blend {
  const value = program.value[step];
  const { left, leftShare, byDisplay, kept } = spread;
  if (program.kind[step] === STEP.set)
    return { keep: 0, value, share: 1, offsetShare: 1, variance: readingVariance(program, step, spread) };
  if (program.kind[step] === STEP.left) {
    const aim = program.extra[step];
    if (Number.isNaN(aim))
      return { keep: 0, value, share: 1, offsetShare: 1, variance: readingVariance(program, step, spread) };
    const isFirst = program.cell[step] === 0;
    const variance = isFirst ? left * left : left * left + readingVariance(program, step, spread);
    const share = leftShare + (1 - leftShare) * byDisplay;
    const offsetShare = isFirst ? 1 - leftShare : 1;
    return { keep: 0, value: leftShare * value + (1 - leftShare) * aim, share, offsetShare, variance };
  }
  const keep = program.extra[step] === 1 ? 0 : kept;
  const moved = 1 - keep;
  return {
    keep,
    value: moved * value,
    share: moved * byDisplay,
    offsetShare: moved,
    variance: moved * 2 * left * left,
  };
}

export function readingVariance(
  program: FleetProgram,
  step: number,
  { reading, secondReading, settling }: Spread,
): number {
  return (program.cell[step] === 0 ? reading * reading : secondReading * secondReading) + settling * settling;
}

export function visitVariance(program: FleetProgram, step: number, spread: Spread): number {
  const anonymous = program.cell[step] === 1 ? spread.analyzer * spread.analyzer : 0;
  return spread.visit * spread.visit + spread.air * spread.air * program.extra[step] + anonymous;
}
