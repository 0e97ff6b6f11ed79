import { medianOf } from '../statistics/median-of.ts';
import { normalQuantile } from '../statistics/normal.ts';
import type { Forecast } from './look-back.ts';

export interface Calibration {
  readonly from: number;
  readonly to: number;
  readonly forecasts: number;
  readonly meanChance: number;
  readonly foundOutside: number;
}

export interface LookBackScore {
  readonly forecasts: number;
  readonly foundOutside: number;
  readonly calibration: readonly Calibration[];
  /** Share of the next readings inside intervals of 50, 80 and 95 %. */
  readonly coverage: readonly { readonly level: number; readonly share: number }[];
  readonly methods: readonly { readonly method: string; readonly brier: number; readonly skill: number }[];
  readonly raised: number;
  readonly raisedFoundOutside: number;
  /** The same as expected: the sum of the chances said of the readings at those visits. */
  readonly raisedExpectedOutside: number;
  /** Median days from the first time that a lane was raised to the visit. */
  readonly leadDays: number;
}

const EDGES = [0, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1];
const LEVELS = [0.5, 0.8, 0.95];

/** Each visit counts once: the first forecast after the visit before it, and the first time that it was raised. */
export function scoreLookBack(all: readonly Forecast[], leastChance: number): LookBackScore {
  const forecasts = all.filter(({ isFirst }) => isFirst);
  const outside = forecasts.filter(({ foundOutside }) => foundOutside).length;
  const base = outside / forecasts.length;
  const brier = (chance: (forecast: Forecast) => number): number =>
    forecasts.reduce((sum, forecast) => sum + (chance(forecast) - Number(forecast.foundOutside)) ** 2, 0) /
    forecasts.length;
  const reference = brier(() => base);
  const method = (name: string, chance: (forecast: Forecast) => number): LookBackScore['methods'][number] => ({
    method: name,
    brier: brier(chance),
    skill: reference > 0 ? 1 - brier(chance) / reference : Number.NaN,
  });
  const raised = firstRaised(all, leastChance);
  return {
    forecasts: forecasts.length,
    foundOutside: outside,
    calibration: calibrate(forecasts),
    coverage: LEVELS.map((level) => ({ level, share: coverageAt(forecasts, level) })),
    methods: [
      method('this notebook', ({ chance }) => chance),
      method('last reading only', ({ chanceByLast }) => chanceByLast),
      method('a line per unit', ({ chanceByLine }) => chanceByLine),
    ],
    raised: raised.length,
    raisedFoundOutside: raised.filter(({ foundOutside }) => foundOutside).length,
    raisedExpectedOutside: raised.reduce((sum, { chance }) => sum + chance, 0),
    leadDays: medianOf(raised.map(({ saidOn, foundOn }) => foundOn - saidOn)),
  };
}

function calibrate(forecasts: readonly Forecast[]): Calibration[] {
  return EDGES.slice(1).flatMap((to, i) => {
    const from = EDGES[i];
    const inside = forecasts.filter(({ chance }) => chance >= from && (chance < to || to === 1));
    if (inside.length === 0) return [];
    return {
      from,
      to,
      forecasts: inside.length,
      meanChance: inside.reduce((sum, { chance }) => sum + chance, 0) / inside.length,
      foundOutside: inside.filter(({ foundOutside }) => foundOutside).length / inside.length,
    };
  });
}

function coverageAt(forecasts: readonly Forecast[], level: number): number {
  const deviations = normalQuantile(0.5 + level / 2);
  const inside = forecasts.filter(
    ({ found, expected, expectedSd }) => Math.abs(found - expected) <= deviations * expectedSd,
  );
  return inside.length / forecasts.length;
}

/** For each lane and next visit, the first day on which it was raised. */
function firstRaised(forecasts: readonly Forecast[], leastChance: number): Forecast[] {
  const first = new Map<string, Forecast>();
  for (const forecast of forecasts) {
    const key = [forecast.unit, forecast.fuel, forecast.fire, forecast.foundOn].join('\u0000');
    if (forecast.outBy >= leastChance && !first.has(key)) first.set(key, forecast);
  }
  return [...first.values()];
}
