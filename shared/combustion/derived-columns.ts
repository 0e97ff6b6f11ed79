/** The built-in derivations that become columns of `derived`, in its order. */
export const DERIVED_COLUMNS = [
  'o2_pct',
  'co2_pct',
  'excess_air_pct',
  'lambda',
  'co_air_free_ppm',
  'co_at_3pct_o2_ppm',
  'co_co2_ratio',
  'nox_at_3pct_o2_ppm',
  'stack_loss_pct',
  'efficiency_gross_pct',
  'efficiency_net_pct',
  'dew_point_C',
  'supply_drop_Pa',
  'o2_reference_pct',
  'co2_reference_pct',
] as const;

/** Those that a reading known only as a bound reaches. */
export const BOUNDED_COLUMNS: readonly string[] = [
  'co_air_free_ppm',
  'co_at_3pct_o2_ppm',
  'co_co2_ratio',
  'nox_at_3pct_o2_ppm',
  'stack_loss_pct',
  'efficiency_gross_pct',
  'efficiency_net_pct',
];
