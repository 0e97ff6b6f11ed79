/** Reasons in the order in which a service manager sends people; the first three are measured safety facts. */
export const REASONS = [
  'co_over_range',
  'co_high',
  'supply_over_maximum',
  'not_returned_to_service',
  'supply_under_minimum',
  'supply_drop_over',
  'supply_drop_growing',
  'out_of_tolerance',
  'leaving_tolerance',
  'rich_in_summer',
  'flue_temperature_rising',
  'scatter_growing',
  'returns_quickly',
  'reading_doubtful',
  'no_data',
] as const;
export type Reason = (typeof REASONS)[number];

/** Tiers are lexicographic: nothing of a lower tier outweighs anything of a higher one. */
export const TIERS = ['safety', 'open', 'supply', 'tolerance', 'cost', 'data'] as const;
export type Tier = (typeof TIERS)[number];

export const TIER_OF: Readonly<Record<Reason, Tier>> = {
  co_over_range: 'safety',
  co_high: 'safety',
  supply_over_maximum: 'safety',
  not_returned_to_service: 'open',
  supply_under_minimum: 'supply',
  supply_drop_over: 'supply',
  supply_drop_growing: 'supply',
  out_of_tolerance: 'tolerance',
  leaving_tolerance: 'tolerance',
  rich_in_summer: 'tolerance',
  flue_temperature_rising: 'cost',
  scatter_growing: 'cost',
  returns_quickly: 'cost',
  reading_doubtful: 'data',
  no_data: 'data',
};

/** One reason to visit one unit. */
export interface Finding {
  readonly unit: string;
  readonly fuel: string;
  /** '' for what concerns the whole unit. */
  readonly fire: string;
  readonly reason: Reason;
  /** Chance that it holds by `byDate`, 0..1; NaN for a measured fact. */
  readonly probability: number;
  /** Days since 1970-01-01, NaN for what holds now. */
  readonly byDate: number;
  readonly falseDiscoveryRate: number;
  readonly evidence: string;
  readonly checkFirst: string;
  readonly readingsUsed: number;
  /** Row of the one reading that the sentence is about; absent where it is about several. */
  readonly row?: number;
  /** Orders findings of one reason, largest first. */
  readonly urgency: number;
}
