import { GAS_COMPONENTS } from './gas-table.ts';

/** A gas at 15 °C and 101.325 kPa, burned at 15 °C, as a real gas by ISO 6976:2016. */
export interface GasQuality {
  /** kJ/m3 */
  readonly grossPerM3: number;
  readonly netPerM3: number;
  /** kJ/m3 */
  readonly grossWobbe: number;
  readonly netWobbe: number;
  /** To dry air. */
  readonly relativeDensity: number;
  readonly compressionFactor: number;
  /** kg/m3 */
  readonly density: number;
  /** g/mol */
  readonly molarMass: number;
}

const GAS_CONSTANT = 8.3144621;
const KELVIN = 288.15;
const PASCAL = 101_325;
/** ISO 6976:2016: dry air of its reference composition. */
const AIR_MOLAR_MASS = 28.96546;
const AIR_COMPRESSION = 0.999595;

/** @throws RangeError for a component that the table lacks: compositions are checked where they are read. */
export function gasQuality(moles: Readonly<Record<string, number>>): GasQuality {
  let [gross, net, molarMass, summation] = [0, 0, 0, 0];
  for (const [name, fraction] of Object.entries(moles)) {
    const gas = GAS_COMPONENTS.get(name);
    if (!gas) throw new RangeError(`no component ${name}`);
    gross += fraction * gas.gross.at15C;
    net += fraction * gas.net.at15C;
    molarMass += fraction * gas.molarMass;
    summation += fraction * gas.summation15;
  }
  const compressionFactor = 1 - summation * summation;
  const litresPerMol = ((GAS_CONSTANT * KELVIN) / PASCAL) * compressionFactor * 1000;
  const relativeDensity = ((molarMass / AIR_MOLAR_MASS) * AIR_COMPRESSION) / compressionFactor;
  const grossPerM3 = (gross / litresPerMol) * 1000;
  const netPerM3 = (net / litresPerMol) * 1000;
  return {
    grossPerM3,
    netPerM3,
    grossWobbe: grossPerM3 / Math.sqrt(relativeDensity),
    netWobbe: netPerM3 / Math.sqrt(relativeDensity),
    relativeDensity,
    compressionFactor,
    density: molarMass / litresPerMol,
    molarMass,
  };
}
