import { calendar } from './calendar.ts';
import { CAMPUS } from './campus.ts';
import { fuelPhysics } from './fuel-physics.ts';
import { lifeOf, type TrueLane } from './life.ts';
import { chanceFrom } from './random.ts';

/** The truth about one lane as of 2026-11-15: what nobody on the campus knows, and a good review comes close to. */
export interface Truth {
  readonly unit: string;
  readonly fuel: string;
  readonly fire: string;
  /** O2 at reference air now, % dry, and its own drift a year. */
  readonly o2Now: number;
  readonly o2PerYear: number;
  /** The band it must hold, as O2: between visits where the register says so, else what it is set to. */
  readonly lower: number;
  readonly upper: number;
  /** Chance that it has been outside at least once within a year from now. */
  readonly outWithinYear: number;
}

const AS_OF = calendar.day('2026-11-15');
const PATHS = 2000;

function bandO2({ fuel, plan }: TrueLane, blank: readonly string[]): readonly [number, number] {
  const setting = [plan.target - plan.tolerance, plan.target + plan.tolerance] as const;
  const [lower, upper] = (blank.includes('service_limits') ? undefined : plan.service) ?? setting;
  const { o2FromCo2 } = fuelPhysics(fuel);
  return plan.quantity === 'o2' ? [lower, upper] : [o2FromCo2(upper), o2FromCo2(lower)];
}

/** Simulates weekly steps over the year; 2,000 paths put the chance within about 0.02. */
function outWithinYear(now: number, lane: TrueLane, lower: number, upper: number, seed: string): number {
  const chance = chanceFrom(`truth ${seed}`);
  let out = 0;
  for (let path = 0; path < PATHS; path++) {
    let o2 = now;
    let inside = o2 >= lower && o2 <= upper;
    for (let week = 0; week < 52 && inside; week++) {
      o2 += lane.o2PerYear / 52 + chance.normal(0, lane.wander / Math.sqrt(52));
      inside = o2 >= lower && o2 <= upper;
    }
    if (!inside) out++;
  }
  return out / PATHS;
}

export function truthOfCampus(): readonly Truth[] {
  return CAMPUS.flatMap((unit) =>
    lifeOf(unit).truth.map((lane) => {
      const o2Now = lane.o2 + (lane.o2PerYear * (AS_OF - lane.since)) / 365.2425;
      const [lower, upper] = bandO2(lane, unit.blank);
      const { fuel, fire, o2PerYear } = lane;
      const chance = outWithinYear(o2Now, lane, lower, upper, `${unit.unit} ${fuel} ${fire}`);
      return { unit: unit.unit, fuel, fire, o2Now, o2PerYear, lower, upper, outWithinYear: chance };
    }),
  );
}
