import type { LanePathPoint } from './lane.ts';
import { pathData } from './svg-numbers.ts';

export interface PathStyle {
  readonly line: string;
  readonly lineWidth: number;
  readonly spread: string;
  readonly spreadOpacity: number;
  /** Of the line after the as-of day, where nothing was seen. */
  readonly dash: string;
}

/** A level with its interval as far as it is given, whole up to the as-of day and broken after it. */
export function drawPath(
  points: readonly LanePathPoint[],
  x: (day: number) => number,
  y: (value: number) => number,
  asOf: number,
  style: PathStyle,
): string {
  const spread = points.filter(({ lower, upper }) => Number.isFinite(lower + upper));
  const outline = [
    ...spread.map(({ day, upper }): [number, number] => [x(day), y(upper)]),
    ...spread.toReversed().map(({ day, lower }): [number, number] => [x(day), y(lower)]),
  ];
  const seen = points.filter(({ day }) => day <= asOf);
  const ahead = points.filter(({ day }, i) => day >= asOf || (points[i + 1]?.day ?? Number.NaN) > asOf);
  const line = (path: readonly LanePathPoint[], dash: string): string =>
    path.length < 2
      ? ''
      : `<path d="${pathData(path.map(({ day, level }) => [x(day), y(level)]))}" fill="none" stroke="${style.line}" stroke-width="${style.lineWidth}" stroke-linejoin="round"${dash}/>`;
  return (
    (outline.length > 3
      ? `<path d="${pathData(outline)}Z" fill="${style.spread}" fill-opacity="${style.spreadOpacity}" stroke="none"/>`
      : '') +
    line(seen, '') +
    line(ahead, ` stroke-dasharray="${style.dash}"`)
  );
}
