/** The least-squares line through a few points, in plain double arithmetic: for many short series. */
export interface StraightLine {
  readonly slope: number;
  /** The slope over its standard error; infinite where the points lie on a rising or falling line exactly, 0 where on a level one. */
  readonly t: number;
  /** Degrees of freedom of t: points less two. */
  readonly freedom: number;
  /** What the line leaves of each y. */
  readonly residuals: Float64Array;
}

/** @param x as many as y, at least three of them, not all equal */
export function straightLine(x: ArrayLike<number>, y: ArrayLike<number>): StraightLine {
  const n = x.length;
  let [meanX, meanY] = [0, 0];
  for (let i = 0; i < n; i++) {
    meanX += x[i] / n;
    meanY += y[i] / n;
  }
  let [xx, xy] = [0, 0];
  for (let i = 0; i < n; i++) {
    xx += (x[i] - meanX) ** 2;
    xy += (x[i] - meanX) * (y[i] - meanY);
  }
  const slope = xy / xx;
  const residuals = new Float64Array(n);
  let squares = 0;
  for (let i = 0; i < n; i++) {
    residuals[i] = y[i] - meanY - slope * (x[i] - meanX);
    squares += residuals[i] ** 2;
  }
  const freedom = n - 2;
  return { slope, t: slope === 0 ? 0 : slope / Math.sqrt(squares / freedom / xx), freedom, residuals };
}
