import * as message from '../messages/formula.ts';
import { differenceUnit, ONE } from '../quantities/unit-algebra.ts';
import type { Builder, FormulaFunction, Value } from './builder.ts';
import type { Expression } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';
import type { GroupStatistic } from './step.ts';
import { numberIn } from './value-type.ts';

type Call = Extract<Expression, { kind: 'call' }>;

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

/** Statistics that a date has too. */
const OF_DATES: readonly GroupStatistic[] = ['count', 'minimum', 'maximum', 'first', 'last', 'previous'];

/**
 * Functions over a group of rows: mean(o2_pct, unit, fire) is each unit's mean at each fire, on every row of it. A key is
 * a column of text, or anything that yields a number or a date: mean(o2_pct, unit, year(taken_at)).
 */
export const GROUP_FUNCTIONS: readonly FormulaFunction[] = WHAT.map(([name, statistic, title]) => ({
  name,
  usage: `${name}(x, column, ...)`,
  title,
  build: (call, builder) => buildGroup(call, statistic, builder),
}));

/** The value of a group function, on every row of its group. @throws FormulaFault */
export function buildGroup(call: Call, statistic: GroupStatistic, builder: Builder): Value {
  const { name } = call;
  const [first, ...rest] = call.arguments;
  if (!first) throw new FormulaFault(message.wrongCount(name, 'a value and the columns to group by', 0), call);
  const value = builder.build(first);
  const isDate = value.type.kind === 'date' && OF_DATES.includes(statistic);
  const unit = isDate ? ONE : builder.unitOf(value, name);
  const keys = rest.map((part) => keyOf(builder.build(part), name, part, builder));
  const args = [value.step, ...keys.flatMap(({ step }) => (step === undefined ? [] : [step]))];
  const step = builder.steps.put({ op: 'group', args, statistic, by: keys.map(({ column }) => column) });
  const counts = statistic === 'count' || statistic === 'rank';
  if (isDate && !counts) return { step, type: value.type, span: call };
  const result = counts ? ONE : statistic === 'stdev' ? differenceUnit(unit) : unit;
  return { step, type: numberIn(result), span: call };
}

interface Key {
  /** A column of text; '' where a step yields the key. */
  readonly column: string;
  readonly step?: number;
}

function keyOf(key: Value, name: string, part: Expression, builder: Builder): Key {
  if (key.column !== undefined) return { column: key.column };
  if (key.type.kind === 'text') throw new FormulaFault(message.needsColumn(name, builder.quote(part)), part);
  return { column: '', step: key.step };
}
