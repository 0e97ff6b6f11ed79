import { impliedCo2maxPct } from '../combustion/flue-gas.ts';
import { numbersOf, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** A fuel that a unit's readings point to; a proposal. */
export interface FuelProposal {
  readonly unit: string;
  readonly fuel: string;
  /** Median CO2max that its O2 and CO2 imply, %. */
  readonly co2maxPct: number;
  readonly readings: number;
}

/** CO2max by stoichiometry: natural gas 11.9, propane and LPG 13.7 to 13.8, No. 2 oil 15.4; the windows do not touch. */
const WINDOWS: readonly (readonly [fuel: string, from: number, to: number])[] = [
  ['natural_gas', 11.3, 12.4],
  ['propane', 13.3, 14.2],
  ['no2_oil', 15, 15.9],
];
const LEAST_READINGS = 3;
/** The first few tell as much as all. */
const MOST_READINGS = 9;
const HIGHEST_O2_PCT = 12;

/** Proposes fuels for units of which neither the readings nor the register name one, where it is not natural gas. */
export function proposeFuels(accepted: Table, known: ReadonlySet<string>): FuelProposal[] {
  const [unit, fuel] = [textsOf(accepted, 'unit'), textsOf(accepted, 'fuel')];
  const [o2, co2] = [numbersOf(accepted, 'o2_pct'), numbersOf(accepted, 'co2_pct')];
  const implied: number[][] = unit.levels.map(() => []);
  const asked = unit.levels.map((name) => !known.has(name));
  for (let row = 0; row < accepted.rows; row++) {
    const code = unit.codes[row];
    if (code < 0 || !asked[code] || implied[code].length >= MOST_READINGS || fuel.codes[row] >= 0) continue;
    if (o2[row] < HIGHEST_O2_PCT && co2[row] > 0) implied[code].push(impliedCo2maxPct(o2[row], co2[row]));
  }
  const proposals: FuelProposal[] = [];
  for (const [code, list] of implied.entries()) {
    if (list.length < LEAST_READINGS) continue;
    const co2maxPct = list.sort((a, b) => a - b)[list.length >> 1];
    const [name = ''] = WINDOWS.find(([, from, to]) => co2maxPct >= from && co2maxPct <= to) ?? [];
    if (name === '' || name === 'natural_gas') continue;
    proposals.push({ unit: unit.levels[code], fuel: name, co2maxPct, readings: list.length });
  }
  return proposals;
}
