/** What a flag of a derived reading says against it, in words; '' for a flag that is a remark, no doubt. */
const DOUBTS: Readonly<Record<string, string>> = {
  fuel_unknown: 'its fuel is not known',
  o2_impossible: 'its O2 is that of air or below zero',
  o2_zero: 'its O2 is 0 %',
  co2_impossible: 'its CO2 is above what the fuel can make',
  o2_and_co2_disagree: 'its O2 and CO2 do not fit one fuel',
  flue_below_air: 'its flue is colder than the air',
};

export const doubtWords = (flag: string): string => (Object.hasOwn(DOUBTS, flag) ? DOUBTS[flag] : '');
