import type { CellContext, CellResult, Inputs, Remark } from '../../shared/cell.ts';
import { BOUNDED_COLUMNS, DERIVED_COLUMNS } from '../../shared/combustion/derived-columns.ts';
import { BLOCK_ROWS } from '../../shared/formula/block-rows.ts';
import { compileFormulas } from '../../shared/formula/compile-formulas.ts';
import type { Scope } from '../../shared/formula/definition.ts';
import { Evaluator } from '../../shared/formula/evaluator.ts';
import type { Program } from '../../shared/formula/program.ts';
import type { OutputColumn, Sources } from '../../shared/formula/sources.ts';
import { workingAt } from '../../shared/formula/working-at.ts';
import { fuelsTable } from '../../shared/fuels/fuels-table.ts';
import { ownFuels } from '../../shared/fuels/own-fuels.ts';
import * as message from '../../shared/messages/derive.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { settingsOf } from '../../shared/settings.ts';
import { numberColumn } from '../../shared/table/columns.ts';
import { missingColumns, tableOf } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { workedReading } from '../../shared/working/worked-reading-of.ts';
import type { Working } from '../../shared/working/working.ts';
import { airSwings } from './air-swings.ts';
import { exponentsTable, exponentsUsed } from './exponents-used.ts';
import { FlagColumn, type FlagWindow } from './flags.ts';
import { originColumns } from './origin-columns.ts';
import type { DeriveParameters } from './parameters.ts';
import { registerRows } from './register-rows.ts';
import { remarksOf } from './remarks.ts';
import { resolveFuels } from './resolve-fuels.ts';
import { scopeOf } from './scope.ts';
import { sourcesOf } from './sources-of.ts';
import { spreadsTable } from './spreads-table.ts';

export interface DeriveResult extends CellResult {
  readonly answer: string;
  readonly remarks: readonly Remark[];
  /** Names of the user's own columns. */
  readonly own: readonly string[];
  /** How a column of a row came about, any relation included. */
  readonly working: (column: string, row: number) => Outcome<Working>;
}

/** What a readings table must have; every other column may be missing and is then unknown. */
const KEY = [
  { name: 'unit', kind: 'text' },
  { name: 'taken_at', kind: 'date' },
] as const;
/** Blocks between two pauses. */
const BLOCKS_AT_A_TIME = 32;

export async function compute(
  parameters: DeriveParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<DeriveResult>> {
  const readings = inputs.get(parameters.readings)?.tables.accepted;
  if (!readings) return fail(message.noReadings(parameters.readings));
  const missing = missingColumns(
    derivedSchema.filter(({ name }) => KEY.some((key) => key.name === name)),
    readings,
  );
  if (missing.length > 0) return fail(message.lacksColumns(parameters.readings, missing.join(', ')));
  const units = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables.units;
  if (parameters.register !== '' && !units) return fail(message.noUnits(parameters.register));
  const taken = parameters.columns.find(({ name }) => derivedSchema.some((column) => column.name === name));
  if (taken) return fail(message.columnTaken(taken.name));

  const own = parameters.columns.map(({ name }) => name);
  const scope = scopeOf(parameters, readings, settingsOf(context).referenceAirC);
  const compiled = compileFormulas([...DERIVED_COLUMNS, ...WATCHED, ...own], scope);
  if (compiled.status !== 'value') return compiled;
  return succeed(await derive({ program: compiled.value, scope }, readings, units, parameters, context));
}

/** Relations that only flags look at. */
const WATCHED = ['co2_misfit_pct', 'flue_vapor', 'flue_water'];

async function derive(
  { program, scope }: { readonly program: Program; readonly scope: Scope },
  readings: Table,
  units: Table | undefined,
  parameters: DeriveParameters,
  context: CellContext,
): Promise<DeriveResult> {
  const given = registerRows(units, parameters.exponents);
  const resolved = resolveFuels(readings, given, parameters.defaultFuel, ownFuels(parameters.fuels));
  const swingsBy = (lambda: Float64Array) => airSwings(readings, resolved, given, lambda);
  const byFleet =
    parameters.exponentSource === 'fleet'
      ? exponentsUsed(parameters, swingsBy(lambdaAlone(program, sourcesOf(readings, given, resolved, parameters))))
      : undefined;
  const effective = byFleet
    ? { ...parameters, exponents: Object.fromEntries(byFleet.map(({ behavior, used }) => [behavior, used])) }
    : parameters;
  const register = registerRows(units, effective.exponents);
  const sources = sourcesOf(readings, register, resolved, effective);
  const own = parameters.columns.map(({ name }) => name);
  const columns = outputColumns([...DERIVED_COLUMNS, ...own], own, readings.rows, sources.bounds.size > 0);
  const window: FlagWindow = {
    misfit: new Float64Array(BLOCK_ROWS),
    misfitSd: new Float64Array(BLOCK_ROWS),
    vapor: new Float64Array(BLOCK_ROWS),
    water: new Float64Array(BLOCK_ROWS),
  };
  const outputs = new Map<string, OutputColumn>(columns)
    .set('co2_misfit_pct', { values: window.misfit, sd: window.misfitSd, window: true })
    .set('flue_vapor', { values: window.vapor, window: true })
    .set('flue_water', { values: window.water, window: true });
  const evaluator = new Evaluator(program, sources, outputs);
  const flags = new FlagColumn(readings, register, resolved);
  const finished = (name: string): Float64Array => (columns.get(name) as OutputColumn).values;
  for (let from = 0, block = 0; from < readings.rows; from += BLOCK_ROWS, block++) {
    const to = Math.min(from + BLOCK_ROWS, readings.rows);
    evaluator.run(from, to);
    flags.block(from, to, window, finished);
    if (block % BLOCKS_AT_A_TIME === BLOCKS_AT_A_TIME - 1) {
      context.progress(to / readings.rows);
      await context.pause();
    }
  }
  const columnsGiven = new Map<string, Column>([
    ...[...readings.columns].filter(([name]) => ['unit', 'taken_at', 'fire', 'state'].includes(name)),
    ['fuel', resolved.fuel],
    ...originColumns(readings, finished),
    ['flags', flags.column()],
  ]);
  for (const [name, { values, sd, bounds }] of columns) {
    const unit = (program.outputs.get(name) as { unit: { code: string } }).unit.code;
    columnsGiven.set(name, numberColumn(unit, values, bounds?.some((mark) => mark !== 0) ? bounds : undefined));
    if (sd) columnsGiven.set(`${name}_sd`, numberColumn(unit === 'Cel' ? 'K' : unit, sd));
  }
  const base = tableOf(derivedSchema, readings.rows, columnsGiven);
  const extra = own.flatMap((name) =>
    [name, `${name}_sd`].map((key) => [key, columnsGiven.get(key) as Column] as const),
  );
  const derived = makeTable([...base.columns, ...extra]);
  const exponents = byFleet ?? exponentsUsed(parameters, swingsBy(finished('lambda')));
  const fuels = fuelsTable(resolved.fuels.filter((fuel) => fuel !== undefined));
  return {
    tables: { derived, fuels, exponents: exponentsTable(exponents), spreads: spreadsTable(parameters) },
    own,
    working: (column, row) => {
      const found = workingAt(column, row, scope, sources);
      if (found.status !== 'value') return found;
      const fields = found.value.inputs.flatMap(({ name }) => readingField(name));
      return succeed({ ...found.value, readings: [workedReading(base, readings, row, fields)] });
    },
    answer: answerOf(derived),
    remarks: remarksOf(flags.counts(), resolved, parameters, exponents),
  };
}

/** The column of the readings that an input is; none where it is a property of the fuel, a constant, an exponent. */
function readingField(input: string): readonly string[] {
  if (input.startsWith('reading.')) return [input.slice('reading.'.length)];
  if (input === 'pressure_Pa') return ['barometer_kPa'];
  if (input === 'burner.air_C') return ['air_C'];
  return input === 'fuel' ? [input] : [];
}

/** Lambda of every row, before anything else: no exponent has a part in it. */
function lambdaAlone(program: Program, sources: Sources): Float64Array {
  const values = new Float64Array(sources.rows);
  new Evaluator(program, { ...sources, bounds: new Map() }, new Map([['lambda', { values }]]), false).run(
    0,
    sources.rows,
  );
  return values;
}

function outputColumns(
  names: readonly string[],
  own: readonly string[],
  rows: number,
  bounded: boolean,
): Map<string, OutputColumn> {
  return new Map(
    names.map((name) => {
      const column: OutputColumn = { values: new Float64Array(rows), sd: new Float64Array(rows) };
      const keepsBounds = bounded && (BOUNDED_COLUMNS.includes(name) || own.includes(name));
      return [name, keepsBounds ? { ...column, bounds: new Int8Array(rows) } : column] as const;
    }),
  );
}

function answerOf(derived: Table): string {
  const known = (name: string): number => {
    const column = derived.columns.get(name);
    if (column?.kind !== 'number') return 0;
    return column.values.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : 1), 0);
  };
  return message.deriveAnswer(
    derived.rows,
    known('efficiency_gross_pct'),
    known('excess_air_pct'),
    known('supply_drop_Pa'),
  );
}
