import * as say from '../messages/judged-working.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { derivedInput } from '../working/derived-input.ts';
import { differenceStep } from '../working/difference-step.ts';
import type { JudgedNumber } from '../working/judged-number.ts';
import type { WorkedNumber } from '../working/worked-number.ts';
import { workedReading } from '../working/worked-reading-of.ts';
import type { Working, WorkingStep } from '../working/working.ts';

/** What a fitted number was fitted to. */
export interface FitGround {
  /** The derived table, the readings with the same rows, and the cell that derived. */
  readonly derived: Table;
  readonly readings: Table;
  readonly cell: string;
  /** Column of the derived table that the fit follows. */
  readonly column: string;
  readonly unit: string;
  /** '' for any. */
  readonly fuel: string;
  readonly fire: string;
  /** Key of a bibliography entry. */
  readonly source: string;
}

/** A fitted number, and where asked what it leaves to its limit: from the last of the readings that it was fitted to. */
export function workingOfFit(
  name: string,
  fitted: WorkedNumber,
  ground: FitGround,
  judged?: JudgedNumber & { readonly source: string },
): Working {
  const { derived, readings, cell, column, source } = ground;
  const row = lastRow(ground);
  const last = row === undefined ? undefined : derivedInput(derived, column, row, cell);
  const steps = [
    fitStep(fitted, last, source),
    ...(judged ? [differenceStep({ name, ...judged, validity: '' }, judged.from, judged.less)] : []),
  ];
  const limit = judged?.from === fitted ? judged.less : judged?.from;
  const own = last && { ...last.input, title: say.lastRead(last.input.title) };
  return {
    name,
    title: steps[steps.length - 1].title,
    steps,
    inputs: [...(own ? [own] : []), ...(limit && judged?.from !== judged?.less ? [limit.input] : [])],
    budget: [],
    functions: [{ usage: say.fitUsage(), title: say.fitMeans() }],
    readings: row === undefined ? [] : [workedReading(derived, readings, row, [])],
  };
}

function lastRow({ derived, column, unit, fuel, fire }: FitGround): number | undefined {
  const wanted = (
    [
      ['unit', unit],
      ['fuel', fuel],
      ['fire', fire],
    ] as const
  ).map(([name, text]) => ({ column: textsOf(derived, name), text }));
  const values = numbersOf(derived, column);
  for (let row = derived.rows - 1; row >= 0; row--)
    if (Number.isFinite(values[row]) && wanted.every((one) => one.text === '' || textAt(one.column, row) === one.text))
      return row;
  return undefined;
}

function fitStep(
  { input, value, sd, unit }: WorkedNumber,
  last: WorkedNumber | undefined,
  source: string,
): WorkingStep {
  return {
    name: input.name,
    title: input.title,
    symbols: `${input.symbol} = fit(${last?.input.symbol ?? ''})`,
    numbers: `${input.symbol} = fit(${say.fitNumbers(last?.input.shown ?? '')})`,
    result: input.shown,
    stated: input.stated,
    ...{ value, sd, unit, source },
    validity: '',
  };
}
