import type { CellContext, CellResult, Inputs } from '../../shared/cell.ts';
import { type FittedSupply, fittingSupply } from '../../shared/foresight/fit-supply.ts';
import { gasLines } from '../../shared/foresight/gas-lines.ts';
import { judgeSupply, type SupplyRow } from '../../shared/foresight/judge-supply.ts';
import { eventDays, NEW_SERIES_EVENTS } from '../../shared/foresight/series-breaks.ts';
import { readSupply, type UnitSupply } from '../../shared/foresight/supply-readings.ts';
import { tableOfSupply, tableOfSupplyPath, tableOfSupplyPoints } from '../../shared/foresight/supply-tables.ts';
import { lacksColumns, noSuchInput, unequalRows } from '../../shared/messages/foresight.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { byPieces } from '../../shared/pieces.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { missingColumns } from '../../shared/table/schema.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Working } from '../../shared/working/working.ts';
import type { SupplyParameters } from './parameters.ts';
import { workingOfDrop } from './working.ts';

export interface SupplyResult extends CellResult {
  readonly rows: readonly SupplyRow[];
  /** The register's units: those of the fleet. */
  readonly register: Table | undefined;
  /** How a number of a row of `supply` came about. */
  readonly working: (column: string, row: number) => Outcome<Working>;
}

/** The drops as read and the growth fitted to them, before any limit. */
export interface SupplyFit extends CellResult {
  readonly units: readonly UnitSupply[];
  readonly fitted: FittedSupply;
}

export async function computeFit(
  parameters: SupplyParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<SupplyFit>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  const derived = inputs.get(parameters.derive)?.tables['derived'];
  if (!readings) return fail(noSuchInput('supply', 'readings'));
  if (!derived) return fail(noSuchInput('supply', 'derive'));
  const missing = [...missingColumns(readingsSchema, readings), ...missingColumns(derivedSchema, derived)];
  if (missing.length > 0) return fail(lacksColumns('supply', 'readings or derive', missing.join(', ')));
  if (readings.rows !== derived.rows) return fail(unequalRows('supply', readings.rows, derived.rows));
  await context.pause();
  const register = inputs.get(parameters.register)?.tables['units'];
  const events = inputs.get(parameters.events)?.tables['events'];
  const units = readSupply({ readings, derived, units: register }, context.asOf, parameters.inputExponent);
  const breaks = eventDays(events, ['regulator', ...NEW_SERIES_EVENTS], context.asOf);
  // Reading a large fleet takes a while; what a newer change made useless is not fitted.
  await context.pause();
  return succeed({ tables: {}, units, fitted: await byPieces(fittingSupply(units, breaks, context.seed), context) });
}

export async function compute(
  parameters: SupplyParameters,
  inputs: Inputs,
  context: CellContext,
  fit: SupplyFit | undefined,
): Promise<Outcome<SupplyResult>> {
  const known = fit ? succeed(fit) : await computeFit(parameters, inputs, context);
  if (known.status !== 'value') return known;
  await context.pause();
  const limits = inputs.get(parameters.register)?.tables['supply-limits'];
  const register = inputs.get(parameters.register)?.tables['units'];
  const { units, fitted } = known.value;
  const rows = judgeSupply(units, fitted, limits, context.asOf, parameters, gasLines(register));
  const tables = {
    supply: tableOfSupply(rows),
    points: tableOfSupplyPoints(rows),
    path: tableOfSupplyPath(rows, known.value.fitted),
  };
  const empty: Table = { rows: 0, columns: new Map() };
  const ground = {
    supply: tables.supply,
    derived: inputs.get(parameters.derive)?.tables['derived'] ?? empty,
    readings: inputs.get(parameters.readings)?.tables['accepted'] ?? empty,
  };
  const working = (column: string, row: number): Outcome<Working> => workingOfDrop(column, row, ground, parameters);
  return succeed({ tables, rows, register, working });
}
