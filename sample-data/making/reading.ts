import type { FireName, FuelName } from './unit-plan.ts';
import type { Visit } from './visit.ts';

/** One reading as a technician would note it, before an export gives it a shape. NaN is not read. Temperatures in °C, pressures in inches of water column. */
export interface Reading {
  readonly unit: string;
  readonly visit: Visit;
  readonly minute: number;
  readonly fire: FireName;
  readonly state: 'as_found' | 'as_left' | 'trial' | '';
  readonly adjusted: 'yes' | 'no' | '';
  readonly fuel: FuelName;
  readonly ratePct: number;
  readonly o2: number;
  readonly co2: number;
  readonly co2From: 'measured' | 'calculated' | '';
  readonly co: string;
  readonly flueC: number;
  readonly airC: number;
  readonly returnC: number;
  readonly staticInwc: number;
  readonly runningInwc: number;
  readonly efficiencyGross: number;
  readonly efficiencyNet: number;
  readonly barometerKPa: number;
  readonly returned: 'yes' | '';
  readonly note: string;
}
