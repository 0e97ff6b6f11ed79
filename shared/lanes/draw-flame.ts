import { LANE_COLORS } from './lane-colors.ts';
import { at } from './svg-numbers.ts';

const HEIGHT: Readonly<Record<string, number>> = { high: 26, mid: 19, single: 22, unnamed: 22, low: 14 };

/** Half-widths and heights above the base, as shares of the flame's height: a large tongue and a small one. */
const OUTLINE: readonly (readonly [number, number])[] = [
  [0.03, 1],
  [0.09, 0.78],
  [0.36, 0.62],
  [0.36, 0.32],
  [0.36, 0.12],
  [0.2, 0],
  [0, 0],
  [-0.2, 0],
  [-0.36, 0.12],
  [-0.36, 0.34],
  [-0.36, 0.5],
  [-0.29, 0.6],
  [-0.25, 0.74],
  [-0.17, 0.68],
  [-0.13, 0.6],
  [-0.11, 0.5],
  [-0.01, 0.62],
  [0.04, 0.8],
  [0.03, 1],
];

/** A flame standing on `base`, as tall as its fire: a picture of the word beside it, not a second meaning. */
export function drawFlame(fire: string, x: number, base: number): string {
  const height = HEIGHT[fire] ?? 22;
  const points = OUTLINE.map(([across, up]) => `${at(x + across * height)} ${at(base - up * height)}`);
  return `<path d="M${points[0]}C${points.slice(1).join(' ')}Z" fill="${LANE_COLORS.flame}" stroke="${LANE_COLORS.edge}" stroke-width=".7"/>`;
}
