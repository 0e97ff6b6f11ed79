/** How a burner's air ratio follows the density of its air: lambda ~ density ** exponent. */
export interface DensityExponents {
  readonly temperature: number;
  readonly pressure: number;
  /** Standard uncertainty of the temperature exponent. */
  readonly temperatureSd: number;
  /** Relative standard uncertainty of lambda from season where none is taken out. */
  readonly seasonSd: number;
}

export type BurnerBehavior = 'fixed_volume' | 'pneumatic' | 'trim' | 'atmospheric' | 'unknown';

/** Source `fanLaw`; an atmospheric burner has no established exponent, an unknown one none that is known. */
export const DENSITY_EXPONENTS: Readonly<Record<BurnerBehavior, DensityExponents>> = {
  fixed_volume: { temperature: 1, pressure: 1, temperatureSd: 0.1, seasonSd: 0 },
  pneumatic: { temperature: 0.5, pressure: 0, temperatureSd: 0.1, seasonSd: 0 },
  trim: { temperature: 0, pressure: 0, temperatureSd: 0.05, seasonSd: 0 },
  atmospheric: { temperature: 0, pressure: 0, temperatureSd: 0, seasonSd: 0.02 },
  unknown: { temperature: 0, pressure: 0, temperatureSd: 0, seasonSd: 0.03 },
};

/**
 * The behavior that a register row implies. Trim holds O2 whatever the burner; a 1:1 gas valve makes the premix and
 * the power burner alike; a fan without either moves a fixed volume.
 */
export function burnerBehavior(burner: string, fuelAirControl: string, trim: string): BurnerBehavior {
  if (trim === 'yes') return 'trim';
  if (burner === 'atmospheric') return 'atmospheric';
  if (fuelAirControl === 'pneumatic') return 'pneumatic';
  if (burner === 'premix' && fuelAirControl !== 'linkage' && fuelAirControl !== 'parallel') return 'pneumatic';
  if (burner === 'premix' || burner === 'power') return 'fixed_volume';
  return 'unknown';
}
