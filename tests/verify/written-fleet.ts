import { createHash } from 'node:crypto';
import { catalogue } from '../../cells/catalogue.ts';
import type { SourceFile } from '../../shared/cell.ts';
import { DAYS_PER_YEAR, writeDay } from '../../shared/quantities/dates.ts';
import { campusReview } from '../../src/notebook/campus-review.ts';
import { Session } from '../../src/notebook/session.ts';
import { normals, rateNoise, seededRandom } from './simulate-fleet.ts';

/** A fleet written out as the files that people have: O2 at the burner, its air's temperature, rounded as instruments show. */
export interface WrittenPlan {
  readonly units: number;
  readonly visits: number;
  readonly seed: number;
  /** Days of the year on which visits fall. */
  readonly season: readonly [number, number];
  /** Years between two visits, and their standard deviation. */
  readonly every: number;
  readonly analyzers: number;
  readonly burner: 'power' | 'premix';
  readonly fuel: 'natural_gas' | 'no2_oil';
  readonly quantity: 'o2' | 'co2';
  readonly measuredO2: boolean;
  readonly measuredCo2: boolean;
  /** Fuel's CO2max over the handbook's. */
  readonly co2maxRatio: number;
  readonly meanRate: number;
  readonly rateSd: number;
  readonly rateFreedom: number;
  /** Share of lanes that stand still and begin to drift, how fast, and before which visit: the last but two or any from the third on. */
  readonly lateShare: number;
  readonly lateRate: number;
  readonly lateVisit: 'last_but_two' | 'any';
  readonly wander: number;
  readonly noise: number;
  readonly visitSd: number;
  readonly analyzerSd: number;
  /** Points of O2 by which the first analyzer reads otherwise since the last visits but two. */
  readonly stepO2: number;
  readonly adjustBeyond: number;
  /** Whether crews set to what a season card says for the day's air, or until the display shows the target. */
  readonly setBy: 'season_card' | 'display';
  readonly recordLeft: boolean;
  /** Distances of the band's edges below and above the target, in points of O2. */
  readonly below: number;
  readonly above: number;
}

export const WRITTEN_FLEET: WrittenPlan = {
  units: 120,
  visits: 8,
  seed: 1,
  season: [1, 365],
  every: 1,
  analyzers: 5,
  burner: 'power',
  fuel: 'natural_gas',
  quantity: 'o2',
  measuredO2: true,
  measuredCo2: true,
  co2maxRatio: 1.01,
  meanRate: 0.25,
  rateSd: 0.25,
  rateFreedom: Number.POSITIVE_INFINITY,
  lateShare: 0,
  lateRate: 0,
  lateVisit: 'last_but_two',
  wander: 0.15,
  noise: 0.08,
  visitSd: 0.05,
  analyzerSd: 0.1,
  stepO2: 0,
  adjustBeyond: 0.6,
  setBy: 'season_card',
  recordLeft: true,
  below: 0.8,
  above: 1,
};

/** One lane's truth at its last visit, at reference air, in points of O2. */
export interface LaneTruth {
  readonly unit: string;
  readonly fire: string;
  readonly level: number;
  readonly rate: number;
  readonly lastDay: number;
  /** The visit since which it drifts, NaN where it always did. */
  readonly lateSince: number;
}

export interface WrittenFleet {
  readonly readings: string;
  readonly register: string;
  readonly truth: readonly LaneTruth[];
  readonly asOf: number;
}

export const AIR = 20.95;
export const TARGET = 4;
/** Dry flue gas to air at stoichiometric burning, and the handbook's CO2max: common practice. */
export const FUELS = { natural_gas: { k: 0.898, co2max: 11.86 }, no2_oil: { k: 0.934, co2max: 15.4 } };
const EXPONENTS = { power: 1, premix: 0.5 };

/** O2 that a burner at a level shows when its air is at a temperature: lambda goes with the air's density. */
function shownO2(level: number, airC: number, { burner, fuel }: WrittenPlan): number {
  const { k } = FUELS[fuel];
  const lambda = (1 + (k * level) / (AIR - level)) * (293.15 / (273.15 + airC)) ** EXPONENTS[burner];
  return (AIR * (lambda - 1)) / (lambda - 1 + k);
}

/** The level, at reference air, of a burner that shows an O2 when its air is at a temperature. */
function levelShowing(o2: number, airC: number, { burner, fuel }: WrittenPlan): number {
  const { k } = FUELS[fuel];
  const lambda = (1 + (k * o2) / (AIR - o2)) / (293.15 / (273.15 + airC)) ** EXPONENTS[burner];
  return (AIR * (lambda - 1)) / (lambda - 1 + k);
}

/** An outside temperature of a temperate place on a day. */
const outsideC = (day: number, normal: () => number): number =>
  10 - 12 * Math.cos((2 * Math.PI * ((day % DAYS_PER_YEAR) - 20)) / DAYS_PER_YEAR) + 4 * normal();

const one = (value: number): string => value.toFixed(1);

export function writeFleet(plan: WrittenPlan): WrittenFleet {
  const random = seededRandom(plan.seed * 6131 + 11);
  const normal = normals(random);
  const bias = Array.from({ length: plan.analyzers }, () => plan.analyzerSd * normal());
  const bias2 = Array.from({ length: plan.analyzers }, () => plan.analyzerSd * normal());
  const readings = ['unit,taken_at,fire,state,adjusted,visit,o2_pct,co2_pct,co2_from,air_C,analyzer'];
  const truth: LaneTruth[] = [];
  let asOf = 0;
  const { k: _, co2max } = FUELS[plan.fuel];
  for (let u = 0; u < plan.units; u++) {
    const unit = `B-${String(u + 1).padStart(4, '0')}`;
    const late = random() < plan.lateShare;
    const fires = ['high', 'low'].map((fire) => {
      const rate = plan.meanRate + plan.rateSd * rateNoise(normal, plan.rateFreedom);
      return { fire, rate: late ? 0 : rate, level: TARGET + 0.1 * normal() };
    });
    const lateAt = plan.lateVisit === 'any' ? 2 + Math.floor(random() * (plan.visits - 2)) : plan.visits - 3;
    let last = 0;
    let lateSince = Number.NaN;
    for (let v = 0; v < plan.visits; v++) {
      const [from, to] = plan.season;
      const year = 15_341 + DAYS_PER_YEAR * plan.every * v;
      const day = Math.max(last + 20, Math.round(year + from + (to - from) * random()));
      const years = last === 0 ? 0 : (day - last) / DAYS_PER_YEAR;
      if (late && v === lateAt) {
        lateSince = last;
        for (const lane of fires) lane.rate = plan.lateRate;
      }
      const airC = outsideC(day, normal);
      const by = Math.floor(random() * plan.analyzers);
      const effect = plan.visitSd * normal();
      const biasO2 = bias[by] + (by === 0 && v >= plan.visits - 3 ? plan.stepO2 : 0);
      const row = (fire: string, state: string, adjusted: string, at: number): void => {
        const o2 = shownO2(at + effect, airC, plan) + biasO2 + plan.noise * normal();
        const true2 = shownO2(at + effect, airC, plan) + bias2[by] + 1.2 * plan.noise * normal();
        const co2 = plan.measuredCo2 ? one(co2max * plan.co2maxRatio * (1 - true2 / AIR)) : '';
        const from = plan.measuredCo2 ? 'measured' : '';
        readings.push(
          [
            unit,
            writeDay(day),
            fire,
            state,
            adjusted,
            `${unit}-${v}`,
            plan.measuredO2 ? one(o2) : '',
            co2,
            from,
            one(airC),
            `A-${by}`,
          ].join(','),
        );
      };
      for (const lane of fires) {
        lane.level += lane.rate * years + plan.wander * Math.sqrt(years) * normal();
        const byCard = plan.setBy === 'season_card';
        const seen = (byCard ? lane.level + effect : shownO2(lane.level + effect, airC, plan)) + biasO2;
        const adjust = Math.abs(seen - TARGET) > plan.adjustBeyond;
        row(lane.fire, 'as_found', adjust ? 'yes' : 'no', lane.level);
        if (!adjust) continue;
        // By a season card, what the instrument would show at 20 °C is brought to the target; else what it shows.
        const set = TARGET - biasO2 + plan.noise * normal();
        lane.level = (byCard ? set : levelShowing(set, airC, plan)) - effect;
        if (plan.recordLeft) row(lane.fire, 'as_left', 'yes', lane.level);
      }
      last = day;
      asOf = Math.max(asOf, day);
    }
    for (const { fire, rate, level } of fires) truth.push({ unit, fire, level, rate, lastDay: last, lateSince });
  }
  return { readings: readings.join('\n'), register: registerOf(plan), truth, asOf };
}

function registerOf(plan: WrittenPlan): string {
  const { quantity, fuel, below, above } = plan;
  const co2 = (o2: number): number => FUELS[fuel].co2max * plan.co2maxRatio * (1 - o2 / AIR);
  const [target, lower, upper] =
    quantity === 'o2'
      ? [TARGET, TARGET - below, TARGET + above]
      : [co2(TARGET), co2(TARGET + above), co2(TARGET - below)];
  const names = ['target', 'lower', 'upper'];
  const heads = ['high', 'low'].flatMap((fire) => names.map((name) => `${quantity}_${fire}_${name}_pct`));
  const values = [target, lower, upper].map((value) => value.toFixed(3));
  const control = plan.burner === 'power' ? 'linkage' : 'pneumatic';
  const rows = Array.from({ length: plan.units }, (_, u) =>
    [`B-${String(u + 1).padStart(4, '0')}`, fuel, plan.burner, control, 'outside', ...values, ...values].join(','),
  );
  return [['unit', 'fuel', 'burner', 'fuel_air_control', 'air_source', ...heads].join(','), ...rows].join('\n');
}

/** Reviews the files as the command line would. */
export async function reviewFleet(fleet: WrittenFleet): Promise<Session> {
  const files = new Map(
    Object.entries({ 'readings.csv': fleet.readings, 'register.csv': fleet.register }).map(([name, text]) => [
      name,
      sourceOf(name, text),
    ]),
  );
  const data = [...files].map(([key, { name, size, hash }]) => ({ key, name, size, hash }));
  const request = { title: 'Fleet', asOf: writeDay(fleet.asOf), data, readings: ['readings.csv'] };
  const review = campusReview({ ...request, register: ['register.csv'] });
  const session = new Session(catalogue);
  session.open(review, files);
  await session.calculate();
  const failed = session.states().filter(({ phase }) => phase !== 'done');
  if (failed.length > 0) throw new Error(failed.map(({ name, message }) => `${name}: ${message}`).join('\n'));
  return session;
}

function sourceOf(name: string, text: string): SourceFile {
  const bytes = new TextEncoder().encode(text);
  const hash = createHash('sha256').update(bytes).digest('hex');
  const open = async function* (): AsyncGenerator<Uint8Array> {
    yield bytes;
  };
  return { name, size: bytes.length, hash, open };
}
