import { judgedDrop } from '../../shared/foresight/judged-drop.ts';
import { judgedLevel } from '../../shared/foresight/judged-level.ts';
import * as say from '../../shared/messages/judged-working.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { derivedInput } from '../../shared/working/derived-input.ts';
import { differenceStep } from '../../shared/working/difference-step.ts';
import type { JudgedNumber } from '../../shared/working/judged-number.ts';
import { plainNumber } from '../../shared/working/plain-number.ts';
import type { WorkedNumber } from '../../shared/working/worked-number.ts';
import { workedReading } from '../../shared/working/worked-reading-of.ts';
import type { Working } from '../../shared/working/working.ts';
import type { Finding } from './finding.ts';
import type { Fleet } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';

/** What a working is put together from: the number judged, the limit, what else is worth knowing, and the reading. */
interface Judged extends JudgedNumber {
  /** What the number or the limit comes from. */
  readonly beside: readonly WorkedNumber[];
  /** Row of the readings; undefined where it is more than one. */
  readonly row: number | undefined;
  /** Columns of the reading that the number rests on. */
  readonly fields: readonly string[];
  readonly source: string;
  readonly validity: string;
}

/** How far the number in a finding's sentence is beyond its limit, down to the derived number or the reading it came from. */
export function workingOfFinding(finding: Finding, fleet: Fleet, parameters: RaiseParameters): Outcome<Working> {
  const judged = judgedIn(finding, fleet, parameters);
  if (!judged) return fail(say.noFormula(finding.reason));
  const { title, symbol, from, less, beside, row, fields, source, validity } = judged;
  const { table, derived } = fleet.readings;
  return succeed({
    name: finding.reason,
    title,
    steps: [differenceStep({ name: finding.reason, title, symbol, source, validity }, from, less)],
    inputs: [from, less, ...beside].map(({ input }) => input),
    budget: [],
    functions: [],
    readings: row === undefined ? [] : [workedReading(derived, table, row, fields)],
  });
}

function judgedIn(finding: Finding, fleet: Fleet, parameters: RaiseParameters): Judged | undefined {
  switch (finding.reason) {
    case 'co_over_range':
    case 'co_high':
      return coOf(finding, fleet, parameters);
    case 'supply_over_maximum':
      return overMaximum(finding, fleet);
    case 'supply_under_minimum':
      return underMinimum(finding, fleet);
    case 'supply_drop_over':
    case 'supply_drop_growing':
      return dropOf(finding, fleet, parameters);
    case 'out_of_tolerance':
    case 'leaving_tolerance':
      return levelOf(finding, fleet, parameters);
    default:
      return undefined;
  }
}

/** The last reading of the finding's unit, fuel and fire ('' for any) in which a column is known. */
function lastKnown({ unit, fuel, fire }: Finding, { readings }: Fleet, column: string): number | undefined {
  const [values, fuelAt, fireAt] = [readings.number(column), readings.text('fuel'), readings.text('fire')];
  return (readings.byUnit.get(unit) ?? []).findLast(
    (row) =>
      Number.isFinite(values[row]) && (fuel === '' || fuelAt(row) === fuel) && (fire === '' || fireAt(row) === fire),
  );
}

/** A number of the derived table, with its working where a cell derived it. */
function derivedAt({ readings }: Fleet, { derive }: RaiseParameters, column: string, row: number): WorkedNumber {
  const found = derivedInput(readings.derived, column, row, derive);
  if (derive !== '' && readings.derived.columns.has(`${column}_sd`)) return found;
  const { from: _, ...input } = found.input;
  return { ...found, input };
}

const CO_COLUMNS = { air_free: 'co_air_free_ppm', at_3pct_o2: 'co_at_3pct_o2_ppm', as_measured: '' } as const;

function coOf({ row }: Finding, fleet: Fleet, parameters: RaiseParameters): Judged | undefined {
  if (row === undefined) return undefined;
  const column = CO_COLUMNS[parameters.coBasis];
  const derived = column === '' ? undefined : derivedAt(fleet, parameters, column, row);
  const bound = fleet.readings.bounds('co_ppm')[row];
  const raw = plainNumber('co_ppm', say.coAsRead(), 'CO', fleet.readings.number('co_ppm')[row], 'ppm', Number.NaN);
  const asRead = bound === 0 ? raw : { ...raw, bound, input: { ...raw.input, shown: say.atLeast(raw.input.shown) } };
  return {
    title: say.coOverLimit(),
    symbol: 'ΔCO',
    from: derived && Number.isFinite(derived.value) ? derived : asRead,
    less: plainNumber('co_limit', say.coLimit(), 'CO,limit', parameters.coLimitPpm, 'ppm'),
    beside: [],
    row,
    fields: ['co_ppm', 'o2_pct', 'co_air_free_ppm'],
    source: 'fieldCo',
    validity: say.coLimitHolds(),
  };
}

function plateLimit({ supplyLimits }: Fleet, unit: string, column: string): number {
  if (!supplyLimits) return Number.NaN;
  const units = textsOf(supplyLimits, 'unit');
  const values = numbersOf(supplyLimits, column);
  for (let row = 0; row < supplyLimits.rows; row++) if (textAt(units, row) === unit) return values[row];
  return Number.NaN;
}

const PRESSURES = ['supply_static_Pa', 'supply_running_Pa'] as const;

function overMaximum({ unit, row }: Finding, fleet: Fleet): Judged | undefined {
  if (row === undefined) return undefined;
  const [atRest, running] = PRESSURES.map((column) => fleet.readings.number(column)[row]);
  const isStatic = atRest >= running || !(running > 0);
  return {
    title: say.overMaximum(),
    symbol: 'Δp',
    from: plainNumber(
      'pressure',
      isStatic ? say.staticRead() : say.runningRead(),
      isStatic ? 'p,static' : 'p,running',
      isStatic ? atRest : running,
      'Pa',
      Number.NaN,
    ),
    less: plainNumber('maximum', say.plateMaximum(), 'p,max', plateLimit(fleet, unit, 'supply_max_Pa'), 'Pa'),
    beside: [],
    row,
    fields: [isStatic ? PRESSURES[0] : PRESSURES[1]],
    source: 'ratingPlate',
    validity: say.plateHolds(),
  };
}

function underMinimum(finding: Finding, fleet: Fleet): Judged | undefined {
  const row = lastKnown({ ...finding, fuel: '' }, fleet, 'supply_running_Pa');
  if (row === undefined) return undefined;
  const running = fleet.readings.number('supply_running_Pa')[row];
  return {
    title: say.underMinimum(),
    symbol: 'Δp',
    from: plainNumber('minimum', say.plateMinimum(), 'p,min', plateLimit(fleet, finding.unit, 'supply_min_Pa'), 'Pa'),
    less: plainNumber('pressure', say.runningRead(), 'p,running', running, 'Pa', Number.NaN),
    beside: [],
    row,
    fields: [PRESSURES[1]],
    source: 'ratingPlate',
    validity: say.plateHolds(),
  };
}

function dropOf(finding: Finding, fleet: Fleet, parameters: RaiseParameters): Judged | undefined {
  const { supply } = fleet;
  if (!supply) return undefined;
  const unit = textsOf(supply, 'unit');
  const at = Array.from({ length: supply.rows }, (_, row) => row).find((row) => textAt(unit, row) === finding.unit);
  if (at === undefined) return undefined;
  const row = lastKnown({ ...finding, fuel: '' }, fleet, 'supply_drop_Pa');
  return {
    ...judgedDrop(supply, at),
    beside: row === undefined ? [] : [lastOf(derivedAt(fleet, parameters, 'supply_drop_Pa', row))],
    row,
    fields: PRESSURES,
    source: 'supplyFirst',
    validity: say.fitHolds(),
  };
}

function levelOf(finding: Finding, fleet: Fleet, parameters: RaiseParameters): Judged | undefined {
  const { drift } = fleet;
  if (!drift) return undefined;
  const texts = ['unit', 'fuel', 'fire'].map((name) => textsOf(drift, name));
  const wanted = [finding.unit, finding.fuel, finding.fire];
  const at = Array.from({ length: drift.rows }, (_, row) => row).find((row) =>
    texts.every((column, i) => textAt(column, row) === wanted[i]),
  );
  if (at === undefined) return undefined;
  const judged = judgedLevel(drift, at);
  const column = isAsMeasured(finding, fleet) ? judged.column.replace('_reference', '') : judged.column;
  const row = lastKnown(finding, fleet, column);
  return {
    ...judged,
    beside: row === undefined ? [] : [lastOf(derivedAt(fleet, parameters, column, row))],
    row,
    fields: ['o2_pct', 'co2_pct', 'air_C', 'barometer_kPa'],
    source: 'jcgm106',
    validity: say.fitHolds(),
  };
}

/** Whether the drift followed readings as measured: then its points are what was measured. */
function isAsMeasured(finding: Finding, { points }: Fleet): boolean {
  if (!points) return false;
  const [unit, fuel, fire] = ['unit', 'fuel', 'fire'].map((name) => textsOf(points, name));
  const [value, measured] = ['value', 'as_measured'].map((name) => numbersOf(points, name));
  const code = unit.levels.indexOf(finding.unit);
  let seen = false;
  for (let row = 0; row < points.rows; row++) {
    if (unit.codes[row] !== code || !Number.isFinite(measured[row])) continue;
    if (textAt(fuel, row) !== finding.fuel || textAt(fire, row) !== finding.fire) continue;
    if (value[row] !== measured[row]) return false;
    seen = true;
  }
  return seen;
}

/** The newest of the numbers that a fit was made of. */
const lastOf = (found: WorkedNumber): WorkedNumber => ({
  ...found,
  input: { ...found.input, title: say.lastRead(found.input.title) },
});
