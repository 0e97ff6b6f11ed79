/** What is said in the working of a saving. */
import { fireName } from './lanes.ts';

const at = (fire: string): string =>
  fire === '' || fire === 'unnamed' ? '' : `, ${fireName(fire).toLowerCase()} fire`;
const stateWords = (state: string): string => (state === 'found' ? 'as found' : 'as left');

export const notWorked = (column: string, worked: string): string =>
  `savings: ${column} has no working of its own; ${worked} have one.`;
export const nothingToCompare = (unit: string): string =>
  `savings: of ${unit} no fire has an efficiency both as found and as left, so nothing was compared.`;
export const ofState = (title: string, state: string, fire: string): string =>
  `${title}, ${stateWords(state)}${at(fire)}`;
export const shareOfFuel = (fire: string): string => `Share of the fuel that counts${at(fire)}`;
export const efficiencyCompared = (state: string, fire: string, isReference: boolean): string =>
  `Efficiency ${stateWords(state)}${isReference ? ' at reference air' : ''}${at(fire)}`;
export const savedAt = (fire: string): string => `Fuel saved${at(fire)}`;
export const efficiencyOfFires = (state: string): string => `Efficiency ${stateWords(state)}, by the fuel of each fire`;
export const fuelSaved = (): string => 'Fuel saved';
export const costSaved = (): string => 'Cost saved in the first year';
export const co2eSaved = (): string => 'CO2e saved in the first year';
export const fuelUseEstimated = (): string => 'Combustion efficiency was measured, fuel use was not measured with it.';
export const fuelAYear = (source: string): string =>
  source === '' ? 'Fuel of a year' : `Fuel of a year, gross heat (${source.replaceAll('_', ' ')})`;
export const shareOfYear = (): string => 'Share of the year that counts';
export const priceOfFuel = (): string => 'Price of the fuel';
export const pricePerKWh = (): string => 'per kWh';
export const factorOfFuel = (): string => 'CO2e of the fuel';
const INPUTS: Readonly<Record<string, string>> = {
  'reading.o2_pct': 'O2, found and left',
  'reading.flue_C': 'Flue temperature, found and left',
  'burner.air_C': 'Air temperature, found and left',
  'burner.temperature_exponent': 'Step to reference air, found and left',
  'fuel.co2_max': 'CO2max of the fuel, found and left',
};
/** Both readings of all fires together: what one instrument brings into both largely cancels. */
export const broughtInBy = (input: string): string => (Object.hasOwn(INPUTS, input) ? INPUTS[input] : input);
export const atReferenceUsage = (): string => 'at_reference_air(η, O2)';
export const atReference = (airC: number): string =>
  `The gross efficiency that the reading would have shown with that O2 and air of ${airC} °C at the same flue temperature: the loss moves with the heat of the air that passes through`;
