/** The cautions that stand in the report, on the page and beside results. General; local codes and plates go before them. */

export const cautionLeave = (): string =>
  'A CO alarm, a smell of gas, a headache or dizziness near a boiler: leave, and call the emergency service or the gas utility. Do not consult a list of readings.';
export const cautionCo = (): string =>
  'High CO can kill. Units with open high CO are not to be run on the strength of this list; a qualified person decides, by rating plate, maker and local code, and CO alone does not say which way the air should go.';
export const cautionOldReadings = (): string =>
  'Old readings do not show today’s condition; a good trend does not mean that a burner is safe.';
export const cautionNoCertificate = (): string =>
  'This is no safety certificate and no substitute for tests, codes, the rating plate or the maker’s manual, nor does it say which law applies.';
export const cautionQualified = (): string =>
  'Only qualified (and, where required, licensed) people adjust burners, with a calibrated analyzer in the flue, checking every fire again after a change.';
export const cautionIntervals = (): string =>
  'A low chance of leaving tolerance never justifies skipping an interval set by law, insurer or maker.';
export const cautionProjection = (): string =>
  'What is projected assumes unchanged hardware and gas, and says nothing of sudden faults.';

export const allCautions = (): readonly string[] => [
  cautionLeave(),
  cautionNoCertificate(),
  cautionOldReadings(),
  cautionQualified(),
  cautionIntervals(),
  cautionProjection(),
];
