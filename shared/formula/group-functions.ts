import * as message from '../messages/formula.ts';
import { differenceUnit, ONE } from '../quantities/unit-algebra.ts';
import type { FormulaFunction } from './builder.ts';
import { FormulaFault } from './formula-fault.ts';
import type { GroupStatistic } from './step.ts';
import { numberIn } from './value-type.ts';

const WHAT: readonly (readonly [string, GroupStatistic, string])[] = [
  ['mean', 'mean', 'Mean of the known values of the group'],
  ['median', 'median', 'Median of the known values of the group'],
  ['stdev', 'stdev', 'Standard deviation of the known values of the group, divisor n - 1'],
  ['count', 'count', 'How many values of the group are known'],
  ['lowest', 'minimum', 'Least known value of the group'],
  ['highest', 'maximum', 'Greatest known value of the group'],
  ['first', 'first', 'First known value of the group, in the table’s order'],
  ['last', 'last', 'Last known value of the group, in the table’s order'],
  ['previous', 'previous', 'Known value before this row in its group'],
  ['rank', 'rank', 'Rank within the group, 1 for the greatest; equal values share the better rank'],
];

/** Functions over a group of rows: mean(o2_pct, unit, fire) is each unit's mean at each fire, on every row of it. */
export const GROUP_FUNCTIONS: readonly FormulaFunction[] = WHAT.map(([name, statistic, title]) => ({
  name,
  usage: `${name}(x, column, ...)`,
  title,
  build(call, builder) {
    const [first, ...rest] = call.arguments;
    if (!first) throw new FormulaFault(message.wrongCount(name, 'a value and the columns to group by', 0), call);
    const value = builder.build(first);
    const unit = builder.unitOf(value, name);
    const by = rest.map((part) => {
      const column = builder.build(part);
      if (column.column === undefined) throw new FormulaFault(message.needsColumn(name, builder.quote(part)), part);
      return column.column;
    });
    const step = builder.steps.put({ op: 'group', args: [value.step], statistic, by });
    const result =
      statistic === 'count' || statistic === 'rank' ? ONE : statistic === 'stdev' ? differenceUnit(unit) : unit;
    return { step, type: numberIn(result), span: call };
  },
}));
