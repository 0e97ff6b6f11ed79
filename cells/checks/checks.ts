export type Severity = 'impossible' | 'suspect' | 'note';

export interface Check {
  readonly severity: Severity;
  /** What it looks for, as a table heading. */
  readonly title: string;
  /** What to do about a finding, one sentence. */
  readonly action: string;
}

/** Every check by name. A finding names the check; nothing is repaired, a repair is a correction that someone makes. */
export const CHECKS = {
  o2_out_of_range: {
    severity: 'impossible',
    title: 'O2 that flue gas cannot have',
    action: 'Look at the printout; correct the value or set the reading aside.',
  },
  co2_over_max: {
    severity: 'impossible',
    title: 'CO2 above what the fuel can give',
    action: 'Check the fuel of the unit and the fuel chosen on the analyzer.',
  },
  o2_and_co2_exclude_each_other: {
    severity: 'impossible',
    title: 'O2 and CO2 that cannot stand together',
    action: 'One of the two is mistyped; look at the printout.',
  },
  temperature_out_of_range: {
    severity: 'impossible',
    title: 'Temperatures that a flue or a room cannot have',
    action: 'Look at the printout and at the unit of the column.',
  },
  negative_value: {
    severity: 'impossible',
    title: 'Negative values of what cannot be negative',
    action: 'Look at the printout; the sensor may have been zeroed in flue gas.',
  },
  probe_in_air: {
    severity: 'suspect',
    title: 'The probe in open air',
    action: 'Keep it out unless the burner really ran with that much air.',
  },
  co2_disagrees: {
    severity: 'suspect',
    title: 'Measured CO2 that disagrees with O2',
    action: 'Check fuel, sensor and typing; the two are to tell the same excess air.',
  },
  other_fuel_chosen: {
    severity: 'suspect',
    title: 'CO2 calculated for another fuel',
    action:
      'The analyzer was set to another fuel, or the register names the wrong one; its CO2 and efficiency are void.',
  },
  excess_air_mismatch: {
    severity: 'note',
    title: 'Printed excess air that O2 does not give',
    action: 'Check the fuel chosen on the analyzer; the printed value is not used.',
  },
  air_ratio_as_percent: {
    severity: 'note',
    title: 'An air ratio in the column of excess air',
    action: 'Map the column as an air ratio.',
  },
  air_free_mismatch: {
    severity: 'suspect',
    title: 'Air-free CO that raw CO and O2 do not give',
    action: 'Check which of the columns is raw; never convert air-free CO again.',
  },
  efficiency_basis: {
    severity: 'note',
    title: 'Printed efficiency on another basis than before',
    action: 'The instrument was switched between gross and net; the printed value is not used.',
  },
  efficiency_shows_other_scale: {
    severity: 'suspect',
    title: 'Temperatures on the other scale by the printed efficiency',
    action:
      'Say the unit of the temperature columns in a profile; °F may have been taken for °C, or the other way round.',
  },
  efficiency_mismatch: {
    severity: 'note',
    title: 'Printed efficiency that fits neither gross nor net',
    action: 'Check the fuel chosen on the analyzer and the units of the temperatures.',
  },
  manifold_over_supply: {
    severity: 'suspect',
    title: 'Manifold pressure above the supply',
    action: 'Check the units of the two columns and the tap.',
  },
  flue_colder_than_air: {
    severity: 'suspect',
    title: 'Flue gas colder than the combustion air',
    action: 'Check whether the two temperatures were swapped.',
  },
  flue_colder_than_water: {
    severity: 'suspect',
    title: 'Flue gas far colder than the water',
    action: 'Check the unit of the temperature; °C may stand where °F is meant.',
  },
  fire_and_rate_disagree: {
    severity: 'note',
    title: 'A firing rate that does not go with the name of the fire',
    action: 'Check whether the burner was modulating while it was read, or the fire is misnamed.',
  },
  ambient_co: {
    severity: 'note',
    title: 'CO in the room',
    action: 'An instrument zeroed there reads low; the room comes first: find where it comes from.',
  },
  calibration_overdue: {
    severity: 'note',
    title: 'Analyzer out of calibration',
    action: 'Widen what you believe of it; have it calibrated.',
  },
  fahrenheit_for_celsius: {
    severity: 'suspect',
    title: 'Temperatures off by the scale',
    action: 'Compare with the printout: °F may have been taken for °C, or the other way round.',
  },
  pressure_unit: {
    severity: 'suspect',
    title: 'Pressure off by a factor of units',
    action: 'Compare with the printout: the unit of this reading may differ from the others.',
  },
  clock_wrong: {
    severity: 'suspect',
    title: 'A clock that was wrong',
    action: 'Find the day of the visit on the work order and correct it.',
  },
  fires_swapped: {
    severity: 'suspect',
    title: 'High and low fire swapped',
    action: 'Look at the printouts of the visit; swap the fires by a correction if so.',
  },
  twins_swapped: {
    severity: 'suspect',
    title: 'Two units swapped at a visit',
    action: 'Ask who was there; swap the two units at that visit by a correction if so.',
  },
  as_left_copied: {
    severity: 'suspect',
    title: 'As left copied from as found',
    action: 'Ask whether it was read again or written down twice.',
  },
  as_left_missing: {
    severity: 'note',
    title: 'Adjusted, and no reading as left',
    action: 'Ask for the last printout of the visit; until then nobody knows how the burner was left.',
  },
  left_before_found: {
    severity: 'suspect',
    title: 'As left before as found',
    action: 'Check states and times of the visit.',
  },
  cold_start: {
    severity: 'note',
    title: 'Found cold, left hot',
    action: 'Do not count the change of flue temperature as saved or lost.',
  },
  sample_air_leak: {
    severity: 'suspect',
    title: 'Air drawn in with the sample',
    action: 'Check hose, filter and pump; the fuel factor cannot show it, since O2 and CO2 thin out together.',
  },
  sensor_floor: {
    severity: 'note',
    title: 'A CO sensor that does not go down',
    action: 'Purge longer in clean air; subtract nothing.',
  },
  two_units_one_minute: {
    severity: 'note',
    title: 'One analyzer at two units in one minute',
    action: 'Check unit ids and times.',
  },
  co_never_moves: {
    severity: 'note',
    title: 'CO that is one number for years',
    action: 'Ask for printouts: a sensor that is dead or covered, or a number written from memory, is no reading.',
  },
  rounded_values: {
    severity: 'note',
    title: 'O2 always in halves',
    action: 'Ask for printouts: values may be written from memory.',
  },
} as const satisfies Readonly<Record<string, Check>>;

export type CheckName = keyof typeof CHECKS;
