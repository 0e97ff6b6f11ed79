import type { CellContext, CellResult, Inputs, Remark } from '../../shared/cell.ts';
import { knownFuels } from '../../shared/fuels/known-fuels.ts';
import { leftOutOfSavings } from '../../shared/messages/left-out.ts';
import * as message from '../../shared/messages/savings.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { DAYS_PER_YEAR, writeDay } from '../../shared/quantities/dates.ts';
import { settingsOf } from '../../shared/settings.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Working } from '../../shared/working/working.ts';
import { emissionFactor } from './emissions.ts';
import { fleetSaving } from './fleet-saving.ts';
import { fuelAYear } from './fuel-a-year.ts';
import { heatReader } from './heat-reader.ts';
import { lastVisits, type TunedVisit } from './last-visits.ts';
import type { SavingsParameters } from './parameters.ts';
import { persistenceOf } from './persistence.ts';
import { savingOfVisit } from './saving-of-visit.ts';
import { type SavingRow, savingsTable } from './savings-table.ts';
import { workingOfSaving } from './working.ts';

export interface SavingsResult extends CellResult {
  readonly answer: string;
  readonly remarks: readonly Remark[];
  /** ISO 4217 code of its money, '' where it is not known. */
  readonly currency: string;
  /** How a number of a row came about. */
  readonly working: (column: string, row: number) => Outcome<Working>;
}

const EMPTY: Table = { rows: 0, columns: new Map() };
const NEEDED: readonly (readonly ['readings' | 'derive', string, readonly string[]])[] = [
  ['readings', 'accepted', ['unit', 'taken_at', 'fire', 'state']],
  ['derive', 'derived', ['unit', 'efficiency_gross_pct']],
];

export async function compute(
  parameters: SavingsParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<SavingsResult>> {
  for (const [parameter, table, columns] of NEEDED) {
    const cell = parameters[parameter];
    const missing = columns.filter((column) => !inputs.get(cell)?.tables[table]?.columns.has(column));
    if (cell !== '' && missing.length > 0) return fail(message.wrongInput(cell, table, missing.join(', ')));
  }
  const accepted = inputs.get(parameters.readings)?.tables['accepted'] ?? EMPTY;
  const derived = inputs.get(parameters.derive)?.tables['derived'] ?? EMPTY;
  const settings = settingsOf(context);
  const airC = parameters.air === 'reference' ? settings.referenceAirC : Number.NaN;
  const rowOf = rowMaker(parameters, inputs, context.asOf, accepted, derived, airC);
  const rows: SavingRow[] = [];
  for (const visit of derived.rows === accepted.rows ? lastVisits(accepted, derived) : []) {
    rows.push(rowOf(visit));
    if (rows.length % 500 === 0) await context.pause();
  }
  const savings = savingsTable(rows);
  return succeed({
    tables: { savings },
    answer: answerOf(rows, savings, settings.currency),
    remarks: [...leftOutRemarks(parameters, inputs), ...remarksOf(rows)],
    working: (column, row) => workingOfSaving(column, rows[row], { accepted, derived, parameters, airC }),
    currency: settings.currency,
  });
}

type RowMaker = (visit: TunedVisit) => SavingRow;

function rowMaker(
  parameters: SavingsParameters,
  inputs: Inputs,
  asOf: number,
  accepted: Table,
  derived: Table,
  airC: number,
): RowMaker {
  const register = inputs.get(parameters.register)?.tables ?? {};
  const fuelOf = fuelAYear(inputs.get(parameters.fuelUse)?.tables['use'], register['economics'], asOf);
  const shareOf = lowFireShares(register['economics']);
  const persistence = persistenceOf(inputs.get(parameters.drift)?.tables['drift']);
  const nextVisit = nextVisits(register['planning']);
  const heatOf = heatReader(accepted, derived, inputs.get(parameters.derive)?.tables ?? {});
  const taken = numbersOf(accepted, 'taken_at');
  const [analyzer, adjusted] = [textsOf(accepted, 'analyzer'), textsOf(accepted, 'adjusted')];
  const fuels = knownFuels(inputs.get(parameters.derive)?.tables['fuels']);
  return (visit) => {
    const properties = fuels(visit.fuel);
    const fires = visit.fires.map((pair) => heatOf(pair));
    const share = shareOf(visit.unit, visit.fuel);
    const leftOn = Math.max(...visit.fires.map(({ left }) => taken[left]));
    const next = parameters.counterfactual === 'next_planned_visit' ? nextVisit(visit.unit) : Number.NaN;
    return {
      unit: visit.unit,
      fuel: visit.fuel,
      foundOn: Math.min(...visit.fires.map(({ found }) => taken[found])),
      leftOn,
      saving: properties && savingOfVisit(fires, properties, share, airC, { fuel: visit.fuel, unit: visit.unit }),
      fuelUse: fuelOf(visit.unit, visit.fuel),
      emissionFactor: emissionFactor(visit.fuel, properties),
      // Against a visit that was planned anyway only the time until then was gained.
      shareOfYear: next > leftOn ? Math.min((next - leftOn) / DAYS_PER_YEAR, 1) : 1,
      counterfactual: counterfactualOf(parameters, next, leftOn),
      persistenceYears: properties ? persistence(visit, fires, properties) : Number.NaN,
      shareUnknown: Number.isNaN(share) && fires.length > 1,
      flueMoved: fires.some(({ found, left }) => Math.abs(left.flueC - found.flueC) > 10),
      leftAlone: visit.fires.every(({ found, left }) => [found, left].every((row) => textAt(adjusted, row) === 'no')),
      analyzer: textAt(analyzer, visit.fires[0].left),
      pairs: visit.fires,
    };
  };
}

function counterfactualOf({ counterfactual }: SavingsParameters, next: number, leftOn: number): string {
  if (counterfactual === 'no_tune_up') return message.comparedWithNoTuneUp();
  return next > leftOn ? message.comparedWithNextVisit(writeDay(next)) : message.comparedWithUnplanned();
}

function lowFireShares(economics: Table | undefined): (unit: string, fuel: string) => number {
  const shares = new Map<string, number>();
  if (economics) {
    const [unit, fuel] = [textsOf(economics, 'unit'), textsOf(economics, 'fuel')];
    const share = numbersOf(economics, 'low_fire_share');
    for (let row = 0; row < economics.rows; row++)
      shares.set(`${textAt(unit, row)}\u0000${textAt(fuel, row)}`, share[row]);
  }
  return (unit, fuel) => shares.get(`${unit}\u0000${fuel}`) ?? shares.get(`${unit}\u0000`) ?? Number.NaN;
}

function nextVisits(planning: Table | undefined): (unit: string) => number {
  const next = new Map<string, number>();
  if (planning) {
    const unit = textsOf(planning, 'unit');
    const on = numbersOf(planning, 'next_visit_on');
    for (let row = 0; row < planning.rows; row++) next.set(textAt(unit, row), on[row]);
  }
  return (unit) => next.get(unit) ?? Number.NaN;
}

function answerOf(rows: readonly SavingRow[], table: Table, currency: string): string {
  const told = textsOf(table, 'distinguishable');
  const yes = rows.filter((_, row) => textAt(told, row) === 'yes').length;
  const { cost, lower, upper, rows: costed } = fleetSaving(rows);
  return message.savingsAnswer(rows.length, yes, cost, lower, upper, costed, currency);
}

function leftOutRemarks(parameters: SavingsParameters, inputs: Inputs): Remark[] {
  return (['drift', 'fuelUse'] as const).flatMap((parameter) => {
    const cell = parameters[parameter];
    if (cell === '' || inputs.has(cell)) return [];
    return [{ severity: 'warning', text: leftOutOfSavings(parameter, cell) } as const];
  });
}

function remarksOf(rows: readonly SavingRow[]): Remark[] {
  const count = (of: (row: SavingRow) => boolean): number => rows.filter(of).length;
  return [
    message.whatSavingsAre(),
    message.sharedAnalyzer(),
    message.shareUnknown(count(({ shareUnknown }) => shareUnknown)),
    message.coldStart(count(({ flueMoved }) => flueMoved)),
    message.richFixed(count(({ saving }) => saving !== undefined && saving.upperPct < 0)),
  ]
    .filter((text) => text !== '')
    .map((text) => ({ severity: 'note', text }));
}
