import { guardedVerdict } from '../../../shared/limits/guarded-verdict.ts';
import type { ToleranceFacts } from '../../../shared/messages/raise.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';

/** What a lane's cause is sought in, widest first. */
export type Scope = Pick<
  ToleranceFacts,
  | 'fleetLeanerO2'
  | 'bothFires'
  | 'supplyLow'
  | 'supplyRaised'
  | 'analyzer'
  | 'analyzerBias'
  | 'analyzerReads'
  | 'control'
>;

/** A row of the drift table as its sentence needs it. */
export interface DriftLane extends Omit<ToleranceFacts, keyof Scope> {
  readonly unit: string;
  readonly horizonDay: number;
}

/** Reads rows of the drift table one at a time: only raised lanes are put into words. */
export function laneReader(drift: Table): (row: number) => DriftLane {
  const texts = new Map(
    ['unit', 'fuel', 'fire', 'quantity', 'slope_source', 'band_source'].map((name) => [name, textsOf(drift, name)]),
  );
  const numbers = new Map(
    [...drift.columns].filter(([, { kind }]) => kind !== 'text').map(([name]) => [name, numbersOf(drift, name)]),
  );
  return (row) => {
    const number = (name: string): number => numbers.get(name)?.[row] ?? Number.NaN;
    const text = (name: string): string => textAt(texts.get(name) ?? textsOf(drift, name), row);
    const [level, sd, lower, upper] = ['level_now', 'level_now_sd', 'lower_limit', 'upper_limit'].map(number);
    return {
      unit: text('unit'),
      fuel: text('fuel'),
      fire: text('fire'),
      quantity: text('quantity'),
      readings: number('readings_used'),
      level,
      sd,
      lower,
      upper,
      verdict: guardedVerdict(level, sd, lower, upper),
      slope: number('slope_per_year'),
      slopeLower: number('slope_lower'),
      slopeUpper: number('slope_upper'),
      slopeSource: text('slope_source'),
      beganOn: writeDay(number('drift_began_on')),
      bandSource: text('band_source'),
      chance: number('probability_out_by_horizon'),
      horizonDay: number('horizon_on'),
      horizonOn: writeDay(number('horizon_on')),
      leavesOn: writeDay(number('leaves_on_50')),
      lastVisitOn: writeDay(number('last_visit_on')),
      levelLeft: number('level_left'),
      marginLeft: number('margin_left'),
      asMeasured: number('last_as_measured'),
    };
  };
}

/** +1 where a lane goes rich (CO2 up, O2 down), -1 lean, by the level where it is outside and else by its drift. */
export const richness = ({ quantity, level, lower, upper, slope }: DriftLane): number => {
  const upward = level > upper ? 1 : level < lower ? -1 : Math.sign(slope);
  return quantity === 'o2_pct' ? -upward : upward;
};
