import type { CellContext, CellResult, Inputs } from '../../shared/cell.ts';
import { DEFAULT_BANDS } from '../../shared/foresight/default-bands.ts';
import { type Forecast, LookBack } from '../../shared/foresight/look-back.ts';
import { type LookBackScore, scoreLookBack } from '../../shared/foresight/score-look-back.ts';
import { tableOfRecords } from '../../shared/foresight/table-of-records.ts';
import { lacksColumns, lookingBack, noSuchInput, unequalRows } from '../../shared/messages/foresight.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { byPieces } from '../../shared/pieces.ts';
import { dayOf, writeDay } from '../../shared/quantities/dates.ts';
import { calibrationSchema, coverageSchema, forecastsSchema, methodsSchema } from '../../shared/schemas/backcheck.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { missingColumns } from '../../shared/table/schema.ts';
import type { Table } from '../../shared/table/table.ts';
import type { BackcheckParameters } from './parameters.ts';

export interface BackcheckResult extends CellResult {
  readonly score: LookBackScore;
  readonly quarters: number;
}

export async function compute(
  parameters: BackcheckParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<BackcheckResult>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  const derived = inputs.get(parameters.derive)?.tables['derived'];
  if (!readings) return fail(noSuchInput('backcheck', 'readings'));
  if (!derived) return fail(noSuchInput('backcheck', 'derive'));
  const missing = [...missingColumns(readingsSchema, readings), ...missingColumns(derivedSchema, derived)];
  if (missing.length > 0) return fail(lacksColumns('backcheck', 'readings or derive', missing.join(', ')));
  if (readings.rows !== derived.rows) return fail(unequalRows('backcheck', readings.rows, derived.rows));
  const register = inputs.get(parameters.register)?.tables;
  const events = inputs.get(parameters.events)?.tables['events'];
  const known = { readings, derived, units: register?.['units'], limits: register?.['limits'], events };
  const { horizonDays, referenceAir } = parameters;
  const options = {
    seed: context.seed,
    referenceAir,
    horizonDays,
    quantity: 'as_target',
    bands: DEFAULT_BANDS,
  } as const;
  const lookBack = new LookBack(known, context.asOf, options);
  const days = quartersBefore(context.asOf, parameters.years);
  const forecasts: Forecast[] = [];
  for (const [place, day] of days.entries()) {
    context.progress(place / days.length, lookingBack(writeDay(day)));
    await context.pause();
    forecasts.push(...(await byPieces(lookBack.sayingOn(day), context)));
  }
  const score = scoreLookBack(forecasts, parameters.leastChance);
  return succeed({ tables: tablesOf(forecasts, score), score, quarters: days.length });
}

/** First days of the past quarters, oldest first, none on or after the day itself. */
function quartersBefore(asOf: number, years: number): number[] {
  const [year, month] = writeDay(asOf).split('-').map(Number);
  const quarter = year * 4 + Math.floor((month - 1) / 3);
  return Array.from({ length: Math.round(years * 4) }, (_, i) => quarter - i)
    .map((place) => dayOf(Math.floor(place / 4), (place % 4) * 3 + 1, 1))
    .filter((day) => day < asOf)
    .reverse();
}

function tablesOf(forecasts: readonly Forecast[], score: LookBackScore): Record<string, Table> {
  return {
    forecasts: tableOfRecords(
      forecastsSchema,
      forecasts.map((forecast) => ({
        unit: forecast.unit,
        fuel: forecast.fuel,
        fire: forecast.fire,
        said_on: forecast.saidOn,
        found_on: Math.floor(forecast.foundOn),
        found: forecast.found,
        found_outside: forecast.foundOutside ? 'yes' : 'no',
        expected: forecast.expected,
        expected_sd: forecast.expectedSd,
        chance: forecast.chance,
        chance_by_last: forecast.chanceByLast,
        chance_by_line: forecast.chanceByLine,
        probability_out_by_horizon: forecast.outBy,
      })),
    ),
    calibration: tableOfRecords(
      calibrationSchema,
      score.calibration.map(({ from, to, forecasts: count, meanChance, foundOutside }) => ({
        from,
        to,
        forecasts: count,
        mean_chance: meanChance,
        found_outside: foundOutside,
      })),
    ),
    coverage: tableOfRecords(coverageSchema, score.forecasts > 0 ? score.coverage.map((row) => ({ ...row })) : []),
    methods: tableOfRecords(methodsSchema, score.forecasts > 0 ? score.methods.map((row) => ({ ...row })) : []),
  };
}
