import { AIR_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';
import { type DefaultBand, UNKNOWN_BURNER_TOLERANCE_O2 } from './default-bands.ts';
import type { Hardware } from './lane-keys.ts';
import type { LaneLimits } from './lane-limits.ts';

export type BandSource = 'service' | 'setting' | 'target' | 'as_left' | 'class_band' | 'none';

/** The band that a lane is held to, in points of its quantity; NaN where there is none. */
export interface LaneBand {
  readonly quantity: 'o2_pct' | 'co2_pct';
  readonly target: number;
  readonly lower: number;
  readonly upper: number;
  readonly settingLower: number;
  readonly settingUpper: number;
  readonly source: BandSource;
}

export interface BandQuestion extends Hardware {
  readonly fuel: string;
  readonly fire: string;
  readonly co2maxPct: number;
  /** Median of the last as-left readings, in the quantity's points; NaN without any. */
  readonly left: number;
  readonly quantity: 'o2_pct' | 'co2_pct';
}

/**
 * In-service limits, else the setting tolerance, else a usual tolerance about the target, else about the last as-left
 * readings, else the class's usual settings, else none. Sides are looked up one by one: bands are often lopsided.
 */
export function bandOfLane(
  lane: BandQuestion,
  limits: LaneLimits | undefined,
  defaults: readonly DefaultBand[],
): LaneBand {
  const { quantity } = lane;
  const usual = usualBand(lane, defaults);
  const target = limits?.target ?? Number.NaN;
  const setting = { lower: limits?.settingLower ?? Number.NaN, upper: limits?.settingUpper ?? Number.NaN };
  const service = { lower: limits?.serviceLower ?? Number.NaN, upper: limits?.serviceUpper ?? Number.NaN };
  const shown = { quantity, target, settingLower: setting.lower, settingUpper: setting.upper };
  if (known(service))
    return {
      ...shown,
      lower: or(service.lower, setting.lower),
      upper: or(service.upper, setting.upper),
      source: 'service',
    };
  if (known(setting)) return { ...shown, ...setting, source: 'setting' };
  if (Number.isFinite(target))
    return { ...shown, lower: Math.max(0, target - usual.below), upper: target + usual.above, source: 'target' };
  if (Number.isFinite(lane.left))
    return {
      ...shown,
      target: lane.left,
      lower: Math.max(0, lane.left - usual.below),
      upper: lane.left + usual.above,
      source: 'as_left',
    };
  if (Number.isFinite(usual.from))
    return { ...shown, target: (usual.from + usual.to) / 2, lower: usual.from, upper: usual.to, source: 'class_band' };
  return { ...shown, lower: Number.NaN, upper: Number.NaN, source: 'none' };
}

const known = ({ lower, upper }: { lower: number; upper: number }): boolean =>
  Number.isFinite(lower) || Number.isFinite(upper);
const or = (first: number, second: number): number => (Number.isFinite(first) ? first : second);

interface Usual {
  readonly below: number;
  readonly above: number;
  readonly from: number;
  readonly to: number;
}

/** The table's row in the lane's quantity: O2 up is CO2 down, so the sides change places. */
function usualBand(lane: BandQuestion, defaults: readonly DefaultBand[]): Usual {
  const kind = lane.fuel.includes('oil') ? 'oil' : 'gas';
  const fits = (rule: string, value: string): boolean => rule === '' || rule === value;
  const found = defaults.find(
    (rule) =>
      fits(rule.burner, lane.burner) &&
      fits(rule.control, lane.control) &&
      fits(rule.fuelKind, kind) &&
      fits(rule.fire, lane.fire),
  );
  const tolerance = UNKNOWN_BURNER_TOLERANCE_O2;
  const o2 = found ?? { below: tolerance, above: tolerance, fromO2: Number.NaN, toO2: Number.NaN };
  if (lane.quantity === 'o2_pct') return { below: o2.below, above: o2.above, from: o2.fromO2, to: o2.toO2 };
  const factor = lane.co2maxPct / AIR_OXYGEN_PCT;
  const co2 = (value: number): number => lane.co2maxPct - value * factor;
  return { below: o2.above * factor, above: o2.below * factor, from: co2(o2.toO2), to: co2(o2.fromO2) };
}
