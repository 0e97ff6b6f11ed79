import { GAS_COMPONENTS, type HeatingValues } from './gas-table.ts';

const GAS_CONSTANT = 8.3144621;
const STANDARD_PA = 101_325;

/** Heating values of a gas as an ideal one, kJ/mol and MJ/m3, at the chosen reference conditions. */
export interface IdealHeatingValues {
  readonly grossPerMol: number;
  readonly netPerMol: number;
  readonly grossPerM3: number;
  readonly netPerM3: number;
}

/**
 * For the reference conditions that contracts and countries differ in: the temperature of combustion (one of the five of
 * ISO 6976) and that of the volume, °C, both at 101.325 kPa. gasQuality has the real gas at 15/15.
 */
export function idealHeatingValues(
  moles: Readonly<Record<string, number>>,
  combustion: keyof HeatingValues,
  volumeC: number,
): IdealHeatingValues {
  let [grossPerMol, netPerMol] = [0, 0];
  for (const [name, fraction] of Object.entries(moles)) {
    const gas = GAS_COMPONENTS.get(name);
    if (!gas) throw new RangeError(`no component ${name}`);
    grossPerMol += fraction * gas.gross[combustion];
    netPerMol += fraction * gas.net[combustion];
  }
  const molesPerM3 = STANDARD_PA / (GAS_CONSTANT * (volumeC + 273.15));
  return {
    grossPerMol,
    netPerMol,
    grossPerM3: (grossPerMol * molesPerM3) / 1000,
    netPerM3: (netPerMol * molesPerM3) / 1000,
  };
}
