import { shownDoubt, shownNumber } from '../../shared/formula/shown-number.ts';
import * as say from '../../shared/messages/savings-working.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import type { Table } from '../../shared/table/table.ts';
import { derivedInput } from '../../shared/working/derived-input.ts';
import { plainNumber } from '../../shared/working/plain-number.ts';
import { workedReading } from '../../shared/working/worked-reading-of.ts';
import type { Working, WorkingInput, WorkingShare, WorkingStep } from '../../shared/working/working.ts';
import type { FirePair } from './last-visits.ts';
import type { SavingsParameters } from './parameters.ts';
import { type Saving, savingBudget } from './saving-of-visit.ts';
import type { SavingRow } from './savings-table.ts';

/** Columns that show their working. */
export const WORKED: readonly string[] = [
  'efficiency_found_pct',
  'efficiency_left_pct',
  'fuel_saved_pct',
  'cost_saved',
  'co2e_saved_kg',
];

interface Read {
  readonly accepted: Table;
  readonly derived: Table;
  readonly parameters: SavingsParameters;
  /** Air that the readings were brought to. */
  readonly airC: number;
}

type Part = Saving['parts'][number];

/** How a number of a row of savings came about, down to the derived efficiencies of the visit's readings. */
export function workingOfSaving(column: string, row: SavingRow, read: Read): Outcome<Working> {
  if (!WORKED.includes(column)) return fail(say.notWorked(column, WORKED.join(', ')));
  const { saving } = row;
  if (!saving || saving.parts.length === 0) return fail(say.nothingToCompare(row.unit));
  const fires = saving.parts.flatMap((part) => fireSteps(part, pairOf(row, part), column, read));
  const steps = [...fires, ...wholeSteps(column, row, saving)];
  const last = steps[steps.length - 1];
  return succeed({
    name: column,
    title: last.title,
    steps,
    inputs: [...saving.parts.flatMap((part) => fireInputs(part, pairOf(row, part), read)), ...yearInputs(column, row)],
    budget: column.startsWith('efficiency') ? [] : budgetOf(saving, last),
    functions:
      read.parameters.air === 'reference' ? [{ usage: say.atReferenceUsage(), title: say.atReference(read.airC) }] : [],
    readings: saving.parts.flatMap((part) => {
      const { found, left } = pairOf(row, part);
      return [found, left].map((at) => workedReading(read.derived, read.accepted, at, ['o2_pct', 'flue_C', 'air_C']));
    }),
  });
}

const pairOf = ({ pairs }: SavingRow, { fire }: Part): FirePair =>
  pairs.find((pair) => pair.fire === fire) ?? { fire, found: 0, left: 0 };

/** Symbols of one fire: those of a unit of one fire need no name of it. */
const indexOf = ({ fire }: Part): string => (fire === '' ? 'all' : fire);

function fireInputs(part: Part, { found, left }: FirePair, { derived, parameters }: Read): WorkingInput[] {
  const columns = ['efficiency_gross_pct', ...(parameters.air === 'reference' ? ['o2_reference_pct'] : [])];
  const efficiencies = (
    [
      ['found', found],
      ['left', left],
    ] as const
  ).flatMap(([state, at]) =>
    columns.map((column) => {
      const { input } = derivedInput(derived, column, at, parameters.derive);
      const [title, symbol] = [say.ofState(input.title, state, part.fire), `${input.symbol},${state},${indexOf(part)}`];
      return { ...input, title, symbol };
    }),
  );
  const weight = plainNumber(`weight_${part.fire}`, say.shareOfFuel(part.fire), `f,${indexOf(part)}`, part.weight, '');
  return [...efficiencies, weight.input];
}

const PERCENT = '%';
/** A saving is a small difference of two efficiencies: whoever checks it needs more of their digits than usual. */
const fine = (percent: number): string => shownNumber(percent, PERCENT, 0, 8);

function stepOf(
  given: Pick<WorkingStep, 'name' | 'title' | 'symbols' | 'numbers' | 'value' | 'unit'> & Partial<WorkingStep>,
): WorkingStep {
  return {
    result: shownNumber(given.value, given.unit),
    stated: shownDoubt(given.value, given.sd ?? Number.NaN, given.unit).stated,
    sd: Number.NaN,
    source: 'steamTip4',
    validity: '',
    ...given,
  };
}

function fireSteps(
  part: Part,
  { found, left }: FirePair,
  column: string,
  { derived, parameters }: Read,
): WorkingStep[] {
  const at = indexOf(part);
  const brought = (
    [
      ['found', found, part.foundPct],
      ['left', left, part.leftPct],
    ] as const
  ).map(([state, row, value]): WorkingStep => {
    const { input } = derivedInput(derived, 'efficiency_gross_pct', row, parameters.derive);
    const o2 = derivedInput(derived, 'o2_reference_pct', row, parameters.derive).input;
    const symbol = `η,${state},${at}`;
    const isReference = parameters.air === 'reference';
    return stepOf({
      name: `efficiency_${state}_${at}`,
      title: say.efficiencyCompared(state, part.fire, isReference),
      symbols: isReference
        ? `${symbol} = at_reference_air(η,gross,${state},${at}, O2,ref,${state},${at})`
        : `${symbol} = η,gross,${state},${at}`,
      numbers: isReference ? `${symbol} = at_reference_air(${input.shown}, ${o2.shown})` : `${symbol} = ${input.shown}`,
      value,
      result: fine(value),
      unit: PERCENT,
      source: isReference ? 'stoichiometry' : 'indirectMethod',
    });
  });
  if (column === 'efficiency_found_pct') return brought.slice(0, 1);
  if (column === 'efficiency_left_pct') return brought.slice(1);
  const [foundShown, leftShown] = brought.map(({ result }) => result);
  return [
    ...brought,
    stepOf({
      name: `saved_${at}`,
      title: say.savedAt(part.fire),
      symbols: `S,${at} = 1 − η,found,${at} / η,left,${at}`,
      numbers: `S,${at} = 1 − ${foundShown} / ${leftShown}`,
      value: 100 * part.saved,
      sd: 100 * part.sd,
      unit: PERCENT,
    }),
  ];
}

/** The fires together, by the share of fuel burnt at each; then what that is in a year. */
function wholeSteps(column: string, row: SavingRow, saving: Saving): WorkingStep[] {
  const sumOf = (symbol: string, value: (part: Part) => number): Pick<WorkingStep, 'symbols' | 'numbers'> => ({
    symbols: `${symbol} = ${saving.parts.map((part) => `f,${indexOf(part)} × ${symbol},${indexOf(part)}`).join(' + ')}`,
    numbers: `${symbol} = ${saving.parts.map((part) => `${shownNumber(part.weight, '')} × ${shownNumber(value(part), PERCENT)}`).join(' + ')}`,
  });
  if (column === 'efficiency_found_pct' || column === 'efficiency_left_pct') {
    const state = column === 'efficiency_found_pct' ? 'found' : 'left';
    const value = state === 'found' ? saving.foundPct : saving.leftPct;
    const sum = sumOf(`η,${state}`, (part) => (state === 'found' ? part.foundPct : part.leftPct));
    return [stepOf({ name: column, title: say.efficiencyOfFires(state), ...sum, value, unit: PERCENT })];
  }
  const saved = stepOf({
    name: 'fuel_saved_pct',
    title: say.fuelSaved(),
    ...sumOf('S', (part) => 100 * part.saved),
    value: saving.savedPct,
    sd: saving.sdPct,
    unit: PERCENT,
  });
  return column === 'fuel_saved_pct' ? [saved] : [saved, yearStep(column, row, saving)];
}

function yearStep(column: string, row: SavingRow, { savedPct, sdPct }: Saving): WorkingStep {
  const { fuelUse, shareOfYear, emissionFactor } = row;
  const isCost = column === 'cost_saved';
  const factor = isCost ? fuelUse.pricePerKWh : emissionFactor;
  const scale = (shareOfYear / 100) * fuelUse.energyKWh * factor;
  const of = (energy: string, each: string, share: string, s: string): string =>
    `${isCost ? 'K' : 'M'} = ${s} × ${share} × ${energy} × ${each}`;
  return stepOf({
    name: column,
    title: isCost ? say.costSaved() : say.co2eSaved(),
    symbols: of('E', isCost ? 'k' : 'm', 'a', 'S'),
    numbers: of(
      shownNumber(fuelUse.energyKWh, 'kWh'),
      shownNumber(factor, isCost ? say.pricePerKWh() : 'kg/kWh'),
      shownNumber(shareOfYear, ''),
      shownNumber(savedPct, PERCENT),
    ),
    value: savedPct * scale,
    sd: Math.abs(sdPct * scale),
    unit: isCost ? '' : 'kg',
    source: isCost ? 'ipmvpA' : 'part98',
    validity: say.fuelUseEstimated(),
  });
}

function yearInputs(column: string, { fuelUse, shareOfYear, emissionFactor }: SavingRow): WorkingInput[] {
  if (column !== 'cost_saved' && column !== 'co2e_saved_kg') return [];
  return [
    plainNumber('energy', say.fuelAYear(fuelUse.source), 'E', fuelUse.energyKWh, 'kWh'),
    plainNumber('share_of_year', say.shareOfYear(), 'a', shareOfYear, ''),
    column === 'cost_saved'
      ? plainNumber('price', say.priceOfFuel(), 'k', fuelUse.pricePerKWh, say.pricePerKWh())
      : plainNumber('factor', say.factorOfFuel(), 'm', emissionFactor, 'kg/kWh'),
  ].map(({ input }) => input);
}

/** What each input brings in over both readings of all fires, in the result's unit: what they share cancels or adds up. */
function budgetOf(saving: Saving, last: WorkingStep): WorkingShare[] {
  const { savedPct, sdPct } = saving;
  const scale = last.name === 'fuel_saved_pct' ? 1 : Math.abs(last.value / savedPct);
  if (!Number.isFinite(scale) || !(sdPct > 0)) return [];
  return savingBudget(saving)
    .map(
      (part): WorkingShare => ({
        input: part.input,
        title: say.broughtInBy(part.input),
        value: Number.NaN,
        sd: Number.NaN,
        slope: Number.NaN,
        contribution: part.sdPct * scale,
        percent: 100 * (part.sdPct / sdPct) ** 2,
      }),
    )
    .filter(({ contribution }) => contribution > 0)
    .sort((a, b) => b.contribution - a.contribution);
}
