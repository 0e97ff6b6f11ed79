/** What a flag of a derived reading says against it, in words; '' for a flag that is a remark, no doubt. */
const DOUBTS: Readonly<Record<string, string>> = {
  fuel_unknown: 'its fuel is not known here',
  o2_impossible: 'its O2 lies outside 0 to 20.9 %',
  o2_zero: 'its O2 is exactly 0, no air left over or a dead sensor',
  o2_very_high: 'its O2 is over 15 %, the probe out of the flue or air drawn in',
  co2_impossible: 'its CO2 is above what the fuel can give',
  o2_and_co2_disagree: 'its O2 and CO2 do not belong to one flue gas of this fuel',
  flue_below_air: 'its flue is colder than its combustion air',
  flue_impossible: 'its flue temperature lies outside -50 to 1200 °C',
  air_impossible: 'its air temperature lies outside -50 to 100 °C',
  co_impossible: 'its CO is below 0 or more than there can be',
  nox_impossible: 'its NOx is below 0 or more than there can be',
  running_above_static: 'its supply is higher running than static',
};

export const doubtWords = (flag: string): string => (Object.hasOwn(DOUBTS, flag) ? DOUBTS[flag] : '');
