import type { CellContext, CellResult, Inputs } from '../../shared/cell.ts';
import { fittingDrift } from '../../shared/foresight/fit-drift.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import { lacksColumns, noSuchInput, unequalRows } from '../../shared/messages/foresight.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { byPieces } from '../../shared/pieces.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { missingColumns } from '../../shared/table/schema.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Working } from '../../shared/working/working.ts';
import { historyTables } from './history-tables.ts';
import { judgeInShards } from './judge-in-shards.ts';
import type { DriftParameters } from './parameters.ts';
import { type ToldLanes, tellLanes } from './told-lanes.ts';
import { workingOfLevel } from './working.ts';

export interface DriftResult extends CellResult {
  readonly told: ToldLanes;
  readonly fitted: FittedDrift;
  /** The register's units, for the places on the lanes. */
  readonly units: Table | undefined;
  /** How a number of a row of `drift` came about. */
  readonly working: (column: string, row: number) => Outcome<Working>;
}

/** Levels, rates and biases of the fleet, before any band or horizon. */
export async function computeFit(
  parameters: DriftParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<FittedDrift>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  const { derived, fuels } = inputs.get(parameters.derive)?.tables ?? {};
  if (!readings) return fail(noSuchInput('drift', 'readings'));
  if (!derived) return fail(noSuchInput('drift', 'derive'));
  const missing = [...missingColumns(readingsSchema, readings), ...missingColumns(derivedSchema, derived)];
  if (missing.length > 0) return fail(lacksColumns('drift', 'readings or derive', missing.join(', ')));
  if (readings.rows !== derived.rows) return fail(unequalRows('drift', readings.rows, derived.rows));
  await context.pause();
  const register = inputs.get(parameters.register)?.tables;
  const events = inputs.get(parameters.events)?.tables['events'];
  const known = { readings, derived, units: register?.['units'], limits: register?.['targets'], events, fuels };
  const { asOf, seed } = context;
  const fitting = fittingDrift(known, { asOf, seed, referenceAir: parameters.referenceAir });
  return succeed(await byPieces(fitting, context));
}

/** The fit held against bands and horizon. */
export async function compute(
  parameters: DriftParameters,
  inputs: Inputs,
  context: CellContext,
  fitted: FittedDrift | undefined,
): Promise<Outcome<DriftResult>> {
  const derived = inputs.get(parameters.derive)?.tables['derived'];
  if (!derived) return fail(noSuchInput('drift', 'derive'));
  const readings = inputs.get(parameters.readings)?.tables['accepted'] ?? { rows: 0, columns: new Map() };
  const fit = fitted ?? (await computeFit(parameters, inputs, context));
  if ('status' in fit && fit.status !== 'value') return fit;
  const known = 'status' in fit ? fit.value : fit;
  const register = inputs.get(parameters.register)?.tables;
  const events = inputs.get(parameters.events)?.tables['events'];
  await context.pause();
  const against = { limits: register?.['limits'], units: register?.['units'], events };
  const rows = await judgeInShards(context, known, against, parameters);
  await context.pause();
  const { other } = known;
  const others = other
    ? await judgeInShards(context, { ...known, ...other }, against, { ...parameters, dates: false }, other)
    : [];
  const judged = await historyTables({ rows, others, derived }, known, () => context.pause());
  await context.pause();
  return succeed({
    tables: { ...judged, ...known.tables },
    told: tellLanes(rows, register?.['units'], known.lanes),
    fitted: known,
    units: register?.['units'],
    working: (column, row) => workingOfLevel(column, row, { drift: judged['drift'], derived, readings }, parameters),
  });
}
