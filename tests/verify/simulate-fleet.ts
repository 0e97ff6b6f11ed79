import { type FleetReadings, READING_STATE } from '../../shared/foresight/fleet-readings.ts';
import { monthOfDay } from '../../shared/foresight/month-of-day.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { medianOf } from '../../shared/statistics/median-of.ts';

/** What every lane is set to. */
const TARGET = 4;

/** What a simulated fleet is like; everything in points of O2 and years. */
export interface FleetPlan {
  readonly units: number;
  readonly visits: number;
  readonly seed: number;
  readonly classes: number;
  readonly analyzers: number;
  readonly meanRate: number;
  readonly rateSd: number;
  /** Student's degrees of freedom of the rates; Infinity for normal ones. */
  readonly rateFreedom: number;
  readonly wander: number;
  readonly reading: number;
  readonly visit: number;
  /** What both cells of one reading share: a flue gas not quite settled. */
  readonly settling: number;
  readonly analyzerSd: number;
  /** Measured CO2 beside O2: its noise and its constant offset in O2 points; undefined for O2 alone. */
  readonly second?: { readonly noise: number; readonly offset: number; readonly analyzerSd: number };
  /** Distance from the target beyond which the technician adjusts. */
  readonly adjustBeyond: number;
  readonly recordLeft: boolean;
  readonly recordAdjusted: boolean;
  readonly knownTarget: boolean;
  /** Gas zones, and how much a month's gas moves all readings of a zone; units of zone 0, 1, 2 ... in turn. */
  readonly zones: number;
  readonly zoneSd: number;
  /** How a technician sets: until the instrument shows the target, or the level itself near the target within this. */
  readonly setting: 'display' | number;
}

export const PLAIN_FLEET: FleetPlan = {
  units: 100,
  visits: 8,
  seed: 1,
  classes: 3,
  analyzers: 5,
  meanRate: 0.2,
  rateSd: 0.25,
  rateFreedom: Number.POSITIVE_INFINITY,
  wander: 0.2,
  reading: 0.15,
  visit: 0.1,
  settling: 0,
  analyzerSd: 0.15,
  adjustBeyond: 0.4,
  recordLeft: true,
  recordAdjusted: true,
  knownTarget: true,
  zones: 1,
  zoneSd: 0,
  setting: 'display',
};

export interface SimulatedFleet {
  readonly readings: FleetReadings;
  /** Per lane. */
  readonly rate: Float64Array;
  /** Per lane: true level after the last visit. */
  readonly level: Float64Array;
  readonly target: number;
  readonly lastDay: Float64Array;
  readonly analyzerBias: Float64Array;
  readonly random: () => number;
  readonly normal: () => number;
}

/** mulberry32: small, seeded, good enough to simulate with. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Box and Muller's normals. */
export function normals(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Student's t scaled to unit variance where it has one (freedom above 2). */
export function rateNoise(normal: () => number, freedom: number): number {
  if (!Number.isFinite(freedom)) return normal();
  let squares = 0;
  for (let i = 0; i < freedom; i++) squares += normal() ** 2;
  const scale = freedom > 2 ? Math.sqrt((freedom - 2) / freedom) : 1;
  return (normal() / Math.sqrt(squares / freedom)) * scale;
}

/** What the gas of a zone's month adds, drawn from numbers of its own, so that a fleet without it stays the same. */
function monthlyGas({ zoneSd, seed }: FleetPlan): (zone: number, day: number) => number {
  const normal = normals(seededRandom(seed * 104729 + 5));
  const known = new Map<number, number>();
  return (zone, day) => {
    const key = zone * 100_000 + monthOfDay(day);
    const effect = known.get(key) ?? zoneSd * normal();
    known.set(key, effect);
    return effect;
  };
}

interface Row {
  unit: number;
  lane: number;
  day: number;
  state: number;
  adjusted: number;
  analyzer: number;
  first: number;
  second: number;
}

/** Two lanes a unit, read by one analyzer a visit; adjusted where found too far from the target. */
export function simulateFleet(plan: FleetPlan): SimulatedFleet {
  const random = seededRandom(plan.seed * 7919 + 17);
  const normal = normals(random);
  const classRate = Array.from({ length: plan.classes }, () => plan.meanRate + 0.1 * normal());
  const bias = Float64Array.from({ length: plan.analyzers }, () => plan.analyzerSd * normal());
  const secondBias = Float64Array.from({ length: plan.analyzers }, () => (plan.second?.analyzerSd ?? 0) * normal());
  const gas = monthlyGas(plan);
  const rows: Row[] = [];
  const lanes = plan.units * 2;
  const rate = new Float64Array(lanes);
  const level = new Float64Array(lanes);
  const lastDay = new Float64Array(lanes);
  const target = TARGET;
  for (let unit = 0; unit < plan.units; unit++) {
    const classOf = unit % plan.classes;
    let day = 12000 + 365 * random();
    for (let l = 0; l < 2; l++) {
      const lane = 2 * unit + l;
      rate[lane] = classRate[classOf] + plan.rateSd * rateNoise(normal, plan.rateFreedom);
      level[lane] = target + 0.1 * normal();
    }
    for (let visit = 0; visit < plan.visits; visit++) {
      const years = visit === 0 ? 0 : Math.max(0.1, 1 + 0.25 * normal());
      day += years * DAYS_PER_YEAR;
      const analyzer = Math.floor(random() * plan.analyzers);
      const effect = plan.visit * normal() + gas(unit % plan.zones, day);
      for (let l = 0; l < 2; l++) {
        const lane = 2 * unit + l;
        level[lane] += rate[lane] * years + plan.wander * Math.sqrt(years) * normal();
        lastDay[lane] = day;
        const read = (state: number, adjusted: number): Row => {
          const settling = plan.settling > 0 ? plan.settling * normal() : 0;
          return {
            unit,
            lane,
            day,
            state,
            adjusted,
            analyzer,
            first: level[lane] + bias[analyzer] + effect + settling + plan.reading * normal(),
            second: plan.second
              ? level[lane] +
                plan.second.offset +
                secondBias[analyzer] +
                effect +
                settling +
                plan.second.noise * normal()
              : Number.NaN,
          };
        };
        const found = read(READING_STATE.found, -1);
        const adjust = Math.abs(found.first - target) > plan.adjustBeyond;
        rows.push({ ...found, adjusted: plan.recordAdjusted ? (adjust ? 1 : 0) : -1 });
        if (!adjust) continue;
        const noise = plan.reading * normal();
        level[lane] =
          plan.setting === 'display' ? target - bias[analyzer] - effect - noise : target + plan.setting * normal();
        const left = read(READING_STATE.left, 1);
        if (plan.recordLeft) rows.push(plan.setting === 'display' ? { ...left, first: target } : left);
      }
    }
  }
  return { readings: columnsOfRows(rows, plan), rate, level, target, lastDay, analyzerBias: bias, random, normal };
}

function columnsOfRows(rows: readonly Row[], plan: FleetPlan): FleetReadings {
  const lanes = plan.units * 2;
  const integers = (pick: (row: Row) => number): Int32Array => Int32Array.from(rows, pick);
  return {
    rows: rows.length,
    unit: integers(({ unit }) => unit),
    lane: integers(({ lane }) => lane),
    day: Float64Array.from(rows, ({ day }) => day),
    state: Uint8Array.from(rows, ({ state }) => state),
    adjusted: Int8Array.from(rows, ({ adjusted }) => adjusted),
    visit: new Int32Array(rows.length).fill(-1),
    analyzer: integers(({ analyzer }) => analyzer),
    first: Float64Array.from(rows, ({ first }) => first),
    second: Float64Array.from(rows, ({ second }) => second),
    extra: new Float64Array(rows.length),
    aim: aimsOf(rows, plan),
    tolerance: new Float64Array(rows.length).fill(plan.adjustBeyond),
    ...zoneMonthsOf(
      Float64Array.from(rows, ({ day }) => day),
      integers(({ unit }) => unit % plan.zones),
    ),
    lanes: {
      count: lanes,
      unit: Int32Array.from({ length: lanes }, (_, lane) => lane >> 1),
      classOf: Int32Array.from({ length: lanes }, (_, lane) => (lane >> 1) % plan.classes),
      fuel: new Int32Array(lanes),
      aimInCo2: new Uint8Array(lanes),
    },
    units: plan.units,
    analyzers: plan.analyzers,
    laterAnalyzers: 0,
    classes: plan.classes,
    fuels: 1,
    breaks: Array.from({ length: plan.units }, () => []),
  };
}

function zoneMonthsOf(day: Float64Array, zone: Int32Array): Pick<FleetReadings, 'zoneMonth' | 'zoneMonths'> {
  const codes = new Map<number, number>();
  const zoneMonth = zone.map((place, row) => {
    const key = place * 100_000 + monthOfDay(day[row]);
    if (!codes.has(key)) codes.set(key, codes.size);
    return codes.get(key) ?? -1;
  });
  return { zoneMonth, zoneMonths: codes.size };
}

/** The target where it is known, else the median of what each lane was found at. */
function aimsOf(rows: readonly Row[], plan: FleetPlan): Float64Array {
  if (plan.knownTarget) return new Float64Array(rows.length).fill(TARGET);
  const found = Array.from({ length: plan.units * 2 }, (): number[] => []);
  for (const { lane, state, first } of rows) if (state === READING_STATE.found) found[lane].push(first);
  return Float64Array.from(rows, ({ lane }) => medianOf(found[lane]));
}
