import type { CellContext, CellResult, Inputs, Remark } from '../../shared/cell.ts';
import type { LaneTables } from '../../shared/lanes/lanes-of.ts';
import { leftOutOfRaise } from '../../shared/messages/left-out.ts';
import { wrongInput } from '../../shared/messages/raise.ts';
import { raisedAnswer } from '../../shared/messages/raised-answer.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { driftPathSchema, driftPointsSchema } from '../../shared/schemas/drift.ts';
import { settingsOf } from '../../shared/settings.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { type Schema, tableOf } from '../../shared/table/schema.ts';
import type { Working } from '../../shared/working/working.ts';
import { type Evidence, gatherEvidence } from './evidence.ts';
import { type Finding, TIER_OF, TIERS } from './finding.ts';
import { findCo } from './findings/find-co.ts';
import { findNoData } from './findings/find-data.ts';
import { findRichInSummer } from './findings/find-rich.ts';
import { findSigns } from './findings/find-signs.ts';
import { findSupply } from './findings/find-supply.ts';
import { findTolerance } from './findings/find-tolerance.ts';
import { type Fleet, fleetOf, restingOf } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';
import { raisedTable, rankFindings } from './rank.ts';
import { remarksOf } from './remarks.ts';
import { workingOfFinding } from './working.ts';

export interface RaiseResult extends CellResult {
  readonly answer: string;
  readonly remarks: readonly Remark[];
  /** Drift's and supply's tables, by reference, from which the lanes of the raised units are drawn. */
  readonly history: LaneTables;
  readonly asOf: number;
  /** How the figure in the sentence of a row came about. */
  readonly working: (row: number) => Outcome<Working>;
}

/** What each cell that is read must bring, or the name in the parameters is of another kind. */
const NEEDED: readonly (readonly [keyof RaiseParameters, string, readonly string[]])[] = [
  ['readings', 'accepted', ['unit', 'taken_at', 'fire', 'state']],
  ['register', 'units', ['unit', 'fuel']],
  ['derive', 'derived', ['unit', 'fuel', 'fire']],
  ['drift', 'drift', ['unit', 'level_now', 'lower_limit', 'upper_limit', 'probability_out_by_horizon']],
  ['supply', 'supply', ['unit', 'verdict']],
  ['instruments', 'instruments', ['analyzer', 'verdict']],
  ['events', 'events', ['unit', 'on', 'event']],
];

export async function compute(
  parameters: RaiseParameters,
  inputs: Inputs,
  context: CellContext,
  known?: Evidence,
): Promise<Outcome<RaiseResult>> {
  const wrong = wrongInputs(parameters, inputs);
  if (wrong) return fail(wrong);
  const gathered = known ? succeed(known) : await gatherEvidence(parameters, inputs, context);
  if (gathered.status !== 'value') return gathered;
  const { readings, months, tests, facts: open, doubtful } = gathered.value.found();
  const fleet = fleetOf(parameters, inputs, context.asOf, readings);
  const resting = restingOf(fleet);
  const skip = (unit: string): boolean => resting(unit) !== '';
  const gone = (unit: string): boolean => resting(unit) === 'retired';
  await context.pause();
  const facts = [...findCo(fleet, parameters), ...open].filter(({ unit }) => !gone(unit));
  await context.pause();
  const tolerance = findTolerance(fleet, parameters, skip, months);
  const findings = [
    ...facts,
    ...findSupply(fleet, fuelOf(fleet)).filter(({ unit }) => !skip(unit)),
    ...tolerance.findings,
    ...findRichInSummer(fleet, parameters, skip, settingsOf(context).referenceAirC),
    ...findSigns(tests, parameters.signFalseDiscoveryRate),
    ...doubtful,
    ...findNoData(fleet, parameters, skip),
  ];
  const ranked = rankFindings(findings, fuelWeights(fleet));
  const remarks = remarksOf(fleet, parameters, ranked, tolerance.expectedInside, skip, months);
  const gravest = remarks.filter(({ severity }) => severity === 'danger');
  return succeed({
    tables: { raised: raisedTable(ranked) },
    answer: answerOf(ranked, unitsOf(fleet, ranked).size),
    remarks: [
      ...gravest,
      ...leftOutRemarks(parameters, inputs),
      ...remarks.filter(({ severity }) => severity !== 'danger'),
    ],
    history: historyOf(parameters, inputs, fleet),
    asOf: context.asOf,
    working: (row) => workingOfFinding(ranked[row], fleet, parameters),
  });
}

const isOptional = (parameter: keyof RaiseParameters): boolean => parameter !== 'readings' && parameter !== 'register';

/** A list that lacks something says so before anything else but danger. */
function leftOutRemarks(parameters: RaiseParameters, inputs: Inputs): Remark[] {
  return NEEDED.flatMap(([parameter]) => {
    const cell = String(parameters[parameter]);
    if (cell === '' || !isOptional(parameter) || inputs.has(cell)) return [];
    return [{ severity: 'warning', text: leftOutOfRaise(parameter, cell) } as const];
  });
}

function wrongInputs(parameters: RaiseParameters, inputs: Inputs): string {
  for (const [parameter, table, columns] of NEEDED) {
    const cell = String(parameters[parameter]);
    if (cell === '' || (isOptional(parameter) && !inputs.has(cell))) continue;
    const found = inputs.get(cell)?.tables[table];
    const missing = columns.filter((column) => !found?.columns.has(column));
    if (missing.length > 0) return wrongInput(cell, table, missing.join(', '));
  }
  return '';
}

/** Units of the register, without one whatever was read; and in any case those raised. */
function unitsOf({ units, readings }: Fleet, ranked: readonly Finding[]): Set<string> {
  const names = new Set([...ranked.map(({ unit }) => unit), ...(units ? [] : readings.byUnit.keys())]);
  if (units) {
    const unit = textsOf(units, 'unit');
    for (let row = 0; row < units.rows; row++) names.add(textAt(unit, row));
  }
  return names;
}

/** Each unit counts once, in its most severe tier. */
function answerOf(ranked: readonly Finding[], units: number): string {
  const tierOfUnit = new Map<string, string>();
  for (const { unit, reason } of ranked) if (!tierOfUnit.has(unit)) tierOfUnit.set(unit, TIER_OF[reason]);
  const counts = TIERS.map((tier) => [...tierOfUnit.values()].filter((found) => found === tier).length);
  return raisedAnswer(tierOfUnit.size, units, TIERS, counts);
}

/** The fuel of a unit's last reading with a supply pressure, else of its last reading. */
function fuelOf({ readings }: Fleet): (unit: string) => string {
  const running = readings.number('supply_running_Pa');
  const fuel = readings.text('fuel');
  return (unit) => {
    const rows = readings.byUnit.get(unit) ?? [];
    const row = rows.findLast((candidate) => Number.isFinite(running[candidate])) ?? rows.at(-1);
    return row === undefined ? '' : fuel(row);
  };
}

function fuelWeights({ economics }: Fleet): (unit: string) => number {
  const weights = new Map<string, number>();
  if (economics) {
    const unit = textsOf(economics, 'unit');
    const energy = numbersOf(economics, 'annual_fuel_kWh');
    for (let row = 0; row < economics.rows; row++)
      if (energy[row] >= 0) weights.set(textAt(unit, row), (weights.get(textAt(unit, row)) ?? 0) + energy[row]);
  }
  return (unit) => weights.get(unit) ?? Number.NaN;
}

function historyOf(parameters: RaiseParameters, inputs: Inputs, fleet: Fleet): LaneTables {
  const drift = inputs.get(parameters.drift)?.tables ?? {};
  const supply = inputs.get(parameters.supply)?.tables ?? {};
  const empty = (schema: Schema) => tableOf(schema, 0, new Map());
  return {
    drift: drift['drift'] ?? empty([]),
    points: drift['points'] ?? empty(driftPointsSchema),
    path: drift['path'] ?? empty(driftPathSchema),
    supply: supply['supply'],
    supplyPoints: supply['points'],
    supplyPath: supply['path'],
    units: fleet.units,
  };
}
