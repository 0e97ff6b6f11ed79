import { type Relation, relation } from './relation.ts';

/** The gas supply, and the readings as they would be at reference air. */
export const REFERENCE_RELATIONS: readonly Relation[] = [
  relation(
    'supply_drop_Pa',
    'Δp',
    'Drop of the gas supply from static to running',
    'Pa',
    'reading.supply_static_Pa - reading.supply_running_Pa',
    'definition',
    'Both at one tap, at this fire.',
  ),
  relation(
    'reference_factor',
    'f,ref',
    'Lambda at reference air over lambda as read',
    '1',
    '(as(air_C, "K") / reference_air) ** burner.temperature_exponent * (site_pressure_Pa / pressure_Pa) ** burner.pressure_exponent * burner.season',
    'fanLaw',
    'Fixed-volume fan: lambda as air density. Pneumatic 1:1 premix: its square root, without barometer. Trim: none. Atmospheric and unknown: none, with a wide uncertainty.',
  ),
  relation(
    'reference_excess_air',
    'e,ref',
    'Excess air from O2 at reference air',
    '1',
    '(1 + excess_air_from_o2) * reference_factor - 1',
    'fanLaw',
    'Reference air is 20 °C, or what the notebook settles, and the site’s standard pressure.',
  ),
  relation(
    'o2_reference_pct',
    'O2,ref',
    'O2 at reference air',
    '%',
    'air_oxygen * reference_excess_air / (fuel.dry_ratio + reference_excess_air)',
    'fanLaw',
    'Below 0 where the burner would be short of air at reference air.',
  ),
  relation(
    'co2_reference_pct',
    'CO2,ref',
    'CO2 at reference air',
    '%',
    'fuel.co2_max * fuel.dry_ratio / (fuel.dry_ratio + (1 + fuel.dry_ratio * (fuel.co2_max / co2_pct - 1)) * reference_factor - 1)',
    'fanLaw',
    'From CO2 as it stands in this row.',
  ),
];
