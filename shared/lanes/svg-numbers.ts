/** A coordinate as SVG carries it: two digits are finer than any screen and keep the pictures small. */
export const at = (value: number): string => {
  const rounded = Math.round(value * 100) / 100;
  return Number.isFinite(rounded) ? String(Object.is(rounded, -0) ? 0 : rounded) : '0';
};

/** An open polyline through the points. */
export function pathData(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('');
}
