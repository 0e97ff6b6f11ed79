/**
 * Standard uncertainties of what an instrument shows. Each is the larger of an absolute and a relative part.
 * They are defaults of the project from common practice (limits such as ±0.3 points of O2 taken as rectangular), editable
 * in every notebook; no standard is quoted.
 */
export interface Spread {
  /** In the quantity's own unit: points, ppm, K, Pa. */
  readonly absolute: number;
  /** Share of the value. */
  readonly relative: number;
}

export const MEASURED = [
  'o2_pct',
  'co2_pct',
  'o2_wet_pct',
  'co_ppm',
  'co_air_free_ppm',
  'nox_ppm',
  'flue_C',
  'air_C',
  'supply_static_Pa',
  'supply_running_Pa',
] as const;
export type Measured = (typeof MEASURED)[number];

export type AnalyzerClass = Readonly<Record<Measured, Spread>>;

const spread = (absolute: number, relative = 0): Spread => ({ absolute, relative });

/** A hand-held service instrument in normal care. */
const SERVICE: AnalyzerClass = {
  o2_pct: spread(0.17),
  co2_pct: spread(0.2),
  o2_wet_pct: spread(0.25),
  co_ppm: spread(12, 0.03),
  co_air_free_ppm: spread(15, 0.05),
  nox_ppm: spread(3, 0.03),
  flue_C: spread(1.5, 0.005),
  air_C: spread(1),
  supply_static_Pa: spread(10, 0.01),
  supply_running_Pa: spread(10, 0.01),
};

export const ANALYZER_CLASSES: Readonly<Record<string, AnalyzerClass>> = {
  service: SERVICE,
  statutory: {
    ...SERVICE,
    o2_pct: spread(0.12),
    co2_pct: spread(0.15),
    co_ppm: spread(6, 0.03),
    nox_ppm: spread(3, 0.03),
    flue_C: spread(1.2),
  },
  worn: {
    ...SERVICE,
    o2_pct: spread(0.35),
    co2_pct: spread(0.4),
    co_ppm: spread(25, 0.1),
    nox_ppm: spread(8, 0.1),
    flue_C: spread(3),
  },
};
