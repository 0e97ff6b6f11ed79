/** What the sample knows about a unit: what its register row says, and what is true of it. Heat input in thousand Btu/h, pressures in inches of water column. */
export interface UnitPlan {
  readonly unit: string;
  readonly site: 'North' | 'South';
  readonly building: string;
  readonly service: 'heating' | 'hot_water' | 'steam' | 'process';
  readonly burner: 'premix' | 'power' | 'atmospheric';
  readonly firing: 'single' | 'two_stage' | 'modulating';
  readonly control: 'linkage' | 'parallel' | 'pneumatic' | 'fixed';
  readonly air: 'room' | 'outside';
  readonly trim: boolean;
  readonly condensing: boolean;
  readonly inputHigh: number;
  readonly inputLow: number;
  readonly fuels: readonly FuelPlan[];
  readonly supply: { readonly staticInwc: number; readonly dropInwc: number };
  readonly installed: string;
  readonly visitsPerYear: 1 | 2;
  /** Groups of register columns that the campus never filled in. */
  readonly blank: readonly ('targets' | 'service_limits' | 'supply' | 'economics' | 'hardware' | 'planning')[];
}

export type FireName = 'high' | 'low' | 'single';
export type FuelName = 'natural_gas' | 'no2_oil';

export interface FuelPlan {
  readonly fuel: FuelName;
  readonly fires: Readonly<Partial<Record<FireName, FirePlan>>>;
  /** MMBtu a year, price per MMBtu, share of the fuel burnt at low fire. */
  readonly annual: number;
  readonly price: number;
  readonly lowShare: number;
}

/** What a technician sets to, in the quantity that the target is written in, and the flue temperature there. */
export interface FirePlan {
  readonly quantity: 'o2' | 'co2';
  readonly target: number;
  readonly tolerance: number;
  readonly service?: readonly [number, number];
  readonly flueC: number;
}
