import type { AnalyzerSplit, DriftReadings } from './drift-readings.ts';

/** The same readings with each analyzer that came to read otherwise told as two: itself, and itself from a day on. */
export function splitAnalyzers(read: DriftReadings, splits: readonly AnalyzerSplit[]): DriftReadings {
  const { fleet, analyzers } = read;
  const known = splits.filter(({ of }) => of < analyzers.length);
  if (known.length === 0) return read;
  const later = new Map(known.map(({ of, on }, i) => [of, { on, code: analyzers.length + i }]));
  const analyzer = fleet.analyzer.map((code, row) => {
    const split = later.get(code);
    return split && fleet.day[row] >= split.on ? split.code : code;
  });
  return {
    ...read,
    fleet: { ...fleet, analyzer, analyzers: fleet.analyzers + known.length, laterAnalyzers: known.length },
    analyzers: [...analyzers, ...known.map(({ of }) => analyzers[of])],
    splits: known,
  };
}

/** The code that an analyzer had before it was told as two. */
export function wholeAnalyzer({ analyzers, splits = [] }: DriftReadings): (code: number) => number {
  const whole = analyzers.length - splits.length;
  return (code) => (code >= whole ? splits[code - whole].of : code);
}
