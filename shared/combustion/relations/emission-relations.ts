import { type Relation, relation } from './relation.ts';

/** Carbon monoxide and nitrogen oxides, each with its basis in its name. */
export const EMISSION_RELATIONS: readonly Relation[] = [
  relation(
    'co_air_free_ppm',
    'CO,af',
    'CO, air-free',
    '[ppm]',
    'otherwise(reading.co_ppm * regulatory_oxygen / (regulatory_oxygen - o2_pct), reading.co_air_free_ppm)',
    'airFreeCo',
    'Dry; O2 in air pinned to 20.9 %. A reading that is air-free already is taken as it is. Poor above 15 % O2.',
  ),
  relation(
    'co_at_3pct_o2_ppm',
    'CO,3',
    'CO at 3 % O2',
    '[ppm]',
    'co_air_free_ppm * (regulatory_oxygen - 3) / regulatory_oxygen',
    'method19',
    'Dry; O2 in air pinned to 20.9 %.',
  ),
  relation(
    'co_co2_ratio',
    'CO/CO2',
    'CO/CO2 ratio',
    '1',
    'otherwise(reading.co_ppm / co2_pct, reading.co_air_free_ppm / fuel.co2_max)',
    'coCo2Ratio',
    'Both dry and at one dilution; air-free CO stands over CO2max.',
  ),
  relation(
    'nox_at_3pct_o2_ppm',
    'NOx,3',
    'NOx at 3 % O2',
    '[ppm]',
    'reading.nox_ppm * (regulatory_oxygen - 3) / (regulatory_oxygen - o2_pct)',
    'method19',
    'Dry; O2 in air pinned to 20.9 %.',
  ),
];
