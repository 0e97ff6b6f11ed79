/** What a register leaves empty, what stands in its place, and what the page says about filling it. */
export const fuel = (): string => 'Fuel';
export const fuelInstead = (): string => "the reading's own fuel, else natural gas, flagged";
export const burner = (): string => 'Burner';
export const burnerInstead = (): string => 'no correction for air density, a wide season';
export const airSource = (): string => 'Air source';
export const airSourceInstead = (): string => 'the air temperature of the readings, else 20 ± 8 °C';
const place = (of: string): string => {
  const [quantity = '', fire = ''] = of.split('_');
  return `${quantity.toUpperCase()} at ${fire} fire`;
};
export const target = (of: string): string => `Target of ${place(of)}, %`;
export const tolerance = (of: string): string => `Tolerance of ${place(of)}, ± %`;
export const targetInstead = (): string => 'the median of the last as-left readings, else the band of the class';
export const supplyMin = (): string => 'Least gas supply, Pa';
export const supplyMax = (): string => 'Highest gas supply, Pa';
export const supplyInstead = (): string => 'the change is shown, without a verdict';

export const gapsHead = (gaps: number, units: number): string =>
  `${gaps} ${gaps === 1 ? 'gap' : 'gaps'} of ${units} ${units === 1 ? 'unit' : 'units'}: what stands in their place until you fill them`;
export const gapsNote = (): string =>
  'What you fill in is kept in the notebook. Where the file says something, the file counts.';
export const unitHead = (): string => 'Unit';
export const missingHead = (): string => 'Missing in the file';
export const insteadHead = (): string => 'Used until then';
export const valueHead = (): string => 'What you know';
export const filledHead = (filled: number): string => `${filled} filled in by you`;
export const fill = (): string => 'Fill in';
export const empty = (): string => 'Empty again';
export const showAll = (gaps: number): string => `Show all ${gaps}`;
export const choose = (): string => 'not known';
export const labelOf = (unit: string, missing: string): string => `${missing} of ${unit}`;
export const badFilled = (): string =>
  'register: "filled" should be a list of {unit, field, value}, each a text; correct it.';
export const unknownField = (field: string, nearest: string): string =>
  `register: "filled" names the field "${field}", which no register has${nearest === '' ? '' : ` (did you mean "${nearest}"?)`}; correct it.`;
