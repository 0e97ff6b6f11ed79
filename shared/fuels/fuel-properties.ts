import { AIR_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';
import type { Composition, Fuel } from './fuel.ts';
import { GAS_COMPONENTS, WATER_LATENT } from './gas-table.ts';

/**
 * What follows from a composition by stoichiometry. Amounts are moles per megajoule of gross heat at 25 °C, the one
 * basis on which gases and oils compare; a mole of any ideal gas takes the same volume.
 */
export interface FuelProperties {
  /** Stoichiometric dry air. */
  readonly air: number;
  /** Oxygen used up. */
  readonly oxygen: number;
  /** CO2 formed or carried, sulfur dioxide counted with it (an analyzer's oxygen reading cannot tell them apart). */
  readonly carbonDioxide: number;
  /** Nitrogen out of the fuel itself. */
  readonly nitrogen: number;
  /** Water formed from hydrogen or carried by the fuel. */
  readonly water: number;
  /** Stoichiometric dry flue gas. */
  readonly dryFlue: number;
  /** Highest CO2 in dry flue gas, %, reached without excess air. */
  readonly co2maxPct: number;
  /** dryFlue / air, the k in excess air = k O2 / (20.95 - O2). */
  readonly dryRatio: number;
  /** Net over gross heating value at 25 °C. */
  readonly netOverGross: number;
  /** Gross heating value, J/mol for a gas, J/kg for an oil. */
  readonly gross: number;
}

interface Stoichiometry {
  readonly oxygen: number;
  readonly carbonDioxide: number;
  readonly nitrogen: number;
  readonly water: number;
  readonly grossJ: number;
  readonly netJ: number;
}

/** Per mole of gas. */
function ofGas(moles: Readonly<Record<string, number>>): Stoichiometry {
  let [oxygen, carbonDioxide, nitrogen, water, grossJ, netJ] = [0, 0, 0, 0, 0, 0];
  for (const [name, fraction] of Object.entries(moles)) {
    const gas = GAS_COMPONENTS.get(name);
    if (!gas) throw new RangeError(`no component ${name}`);
    oxygen += fraction * (gas.carbon + gas.hydrogen / 4 - gas.oxygen / 2);
    carbonDioxide += fraction * gas.carbon;
    nitrogen += (fraction * gas.nitrogen) / 2;
    water += (fraction * gas.hydrogen) / 2;
    grossJ += fraction * gas.gross.at25C * 1e3;
    netJ += fraction * gas.net.at25C * 1e3;
  }
  return { oxygen, carbonDioxide, nitrogen, water, grossJ, netJ };
}

/** Atomic masses, g/mol (IUPAC 2013 conventional). */
const MASS = { C: 12.011, H: 1.008, O: 15.999, N: 14.007, S: 32.06, water: 18.01528 };

/** Per kilogram of a fuel known by its ultimate analysis. */
function ofUltimate({ mass, grossJperKg }: Extract<Composition, { kind: 'ultimate' }>): Stoichiometry {
  const moles = (element: keyof typeof MASS): number => ((mass[element] ?? 0) * 1000) / MASS[element];
  const water = moles('H') / 2 + moles('water');
  return {
    oxygen: moles('C') + moles('H') / 4 + moles('S') - moles('O') / 2,
    carbonDioxide: moles('C') + moles('S'),
    nitrogen: moles('N') / 2,
    water,
    grossJ: grossJperKg,
    netJ: grossJperKg - water * WATER_LATENT.at25C * 1e3,
  };
}

export function fuelProperties({ composition }: Pick<Fuel, 'composition'>): FuelProperties {
  const raw = composition.kind === 'gas' ? ofGas(composition.moles) : ofUltimate(composition);
  const perMJ = 1e6 / raw.grossJ;
  const air = raw.oxygen / (AIR_OXYGEN_PCT / 100);
  const dryFlue = raw.carbonDioxide + raw.nitrogen + air - raw.oxygen;
  return {
    air: air * perMJ,
    oxygen: raw.oxygen * perMJ,
    carbonDioxide: raw.carbonDioxide * perMJ,
    nitrogen: raw.nitrogen * perMJ,
    water: raw.water * perMJ,
    dryFlue: dryFlue * perMJ,
    co2maxPct: (100 * raw.carbonDioxide) / dryFlue,
    dryRatio: dryFlue / air,
    netOverGross: raw.netJ / raw.grossJ,
    gross: raw.grossJ,
  };
}
