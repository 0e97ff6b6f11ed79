import type { Remark } from '../../shared/cell.ts';
import { exponentRemark, flagRemark, uncertaintyRemark, unknownFuels } from '../../shared/messages/derive.ts';
import type { ExponentsUsed } from './exponents-used.ts';
import type { Flag } from './flags.ts';
import type { DeriveParameters } from './parameters.ts';
import type { ResolvedRows } from './resolve-fuels.ts';

const DANGER: readonly Flag[] = ['co_over_range'];
const NOTES: readonly Flag[] = ['condensing', 'co_given_air_free', 'season_not_removed', 'air_assumed'];

/** Defaults used and what they touched, most severe first. */
export function remarksOf(
  counts: readonly (readonly [Flag, number])[],
  { unknown }: ResolvedRows,
  { classes, defaultClass, exponentSource }: DeriveParameters,
  exponents: readonly ExponentsUsed[],
): Remark[] {
  const flagged = counts.map(([flag, rows]): Remark => {
    if (flag === 'fuel_unknown')
      return {
        severity: 'danger',
        text: unknownFuels([...unknown.keys()].join(', '), rows, [...unknown.values()][0] ?? ''),
      };
    const severity = DANGER.includes(flag) ? 'danger' : NOTES.includes(flag) ? 'note' : 'warning';
    return { severity, text: flagRemark(flag, rows) };
  });
  const { o2_pct, flue_C } = classes[defaultClass];
  const order = { danger: 0, warning: 1, note: 2 };
  return [
    ...flagged.sort((a, b) => order[a.severity] - order[b.severity]),
    ...exponents
      .filter((each) => isTold(each, exponentSource === 'fleet'))
      .map(({ behavior, used, fleet }): Remark => {
        const { verdict, swings, units, exponent, lower, upper } = fleet;
        return {
          severity: 'note',
          text: exponentRemark(
            behavior,
            verdict,
            swings,
            units,
            [exponent, lower, upper],
            used.temperature,
            exponentSource === 'fleet',
          ),
        };
      }),
    { severity: 'note', text: uncertaintyRemark(o2_pct.absolute, flue_C.absolute, defaultClass) },
  ];
}

/** Asked of the fleet, every burner that it has is answered; else only where the fleet contradicts the table. */
function isTold({ used, fleet }: ExponentsUsed, asked: boolean): boolean {
  if (asked) return fleet.swings > 0;
  return fleet.verdict === 'estimated' && (used.temperature < fleet.lower || used.temperature > fleet.upper);
}
