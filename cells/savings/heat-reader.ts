import { knownSpreads } from '../../shared/combustion/known-spreads.ts';
import { AIR_OXYGEN_PCT } from '../../shared/combustion/oxygen-in-air.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { TunedVisit } from './last-visits.ts';
import type { HeatReading } from './reference-efficiency.ts';
import type { FireHeat } from './saving-of-visit.ts';
import type { HeatSpread } from './saving-terms.ts';

/** Of an assumed air temperature, where the derivation names none (K). */
const MISSING_AIR_SD = 8;

/** What the readings of a pair come to, with their uncertainties; `beside` are the tables beside the derived readings. */
export function heatReader(
  accepted: Table,
  derived: Table,
  beside: Readonly<Record<string, Table>>,
): (pair: TunedVisit['fires'][number]) => FireHeat {
  const reading = readingReader(accepted, derived);
  const spread = spreadReader(accepted, derived, beside);
  const o2Reference = numbersOf(derived, 'o2_reference_pct');
  return ({ fire, found, left }) => ({
    fire,
    found: reading(found),
    left: reading(left),
    foundO2Pct: o2Reference[found],
    leftO2Pct: o2Reference[left],
    foundSpread: spread(found),
    leftSpread: spread(left),
  });
}

function readingReader(accepted: Table, derived: Table): (row: number) => HeatReading {
  const [efficiency, o2, dewPoint] = ['efficiency_gross_pct', 'o2_pct', 'dew_point_C'].map((name) =>
    numbersOf(derived, name),
  );
  const [flue, air] = ['flue_C', 'air_C'].map((name) => numbersOf(accepted, name));
  return (row) => ({
    efficiencyPct: efficiency[row],
    o2Pct: o2[row],
    flueC: flue[row],
    airC: air[row],
    dewPointC: dewPoint[row],
  });
}

function spreadReader(
  accepted: Table,
  derived: Table,
  beside: Readonly<Record<string, Table>>,
): (row: number) => HeatSpread {
  const sdOf = knownSpreads(beside['spreads']);
  const fuelShare = fuelShares(derived, beside['fuels']);
  const [o2, o2Sd, referenceSd] = ['o2_pct', 'o2_pct_sd', 'o2_reference_pct_sd'].map((name) =>
    numbersOf(derived, name),
  );
  const [flue, air] = ['flue_C', 'air_C'].map((name) => numbersOf(accepted, name));
  const [analyzer, unit] = ['analyzer', 'unit'].map((name) => textsOf(accepted, name));
  return (row) => {
    const name = textAt(analyzer, row);
    const whole = Number.isNaN(o2Sd[row]) ? sdOf(name, 'o2_pct', o2[row]) : o2Sd[row];
    const byFuel = fuelShare(row);
    return {
      o2Pct: Math.sqrt(Math.max(0, whole * whole - byFuel * byFuel)),
      o2ByFuelPct: byFuel,
      referenceO2Pct: Number.isNaN(referenceSd[row]) ? 0 : referenceSd[row],
      flueK: sdOf(name, 'flue_C', flue[row]),
      airK: Number.isNaN(air[row]) ? MISSING_AIR_SD : sdOf(name, 'air_C', air[row]),
      analyzer: name === '' ? `\u0000${textAt(unit, row)}` : name,
    };
  };
}

/** Standard uncertainty that CO2max brings into an O2 that was calculated from CO2, in points; 0 for one that was read. */
function fuelShares(derived: Table, fuels: Table | undefined): (row: number) => number {
  const [o2From, fuel] = ['o2_from', 'fuel'].map((name) => textsOf(derived, name));
  const co2 = numbersOf(derived, 'co2_pct');
  const known = new Map<string, readonly [max: number, sd: number]>();
  if (fuels) {
    const names = textsOf(fuels, 'fuel');
    const [max, sd] = ['co2_max_pct', 'co2_max_sd_pct'].map((name) => numbersOf(fuels, name));
    for (let row = 0; row < fuels.rows; row++) known.set(textAt(names, row), [max[row], sd[row]]);
  }
  return (row) => {
    const of = textAt(o2From, row) === 'calculated' ? known.get(textAt(fuel, row)) : undefined;
    const share = of ? (AIR_OXYGEN_PCT * co2[row] * of[1]) / (of[0] * of[0]) : 0;
    return Number.isFinite(share) ? share : 0;
  };
}
