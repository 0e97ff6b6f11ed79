import { describe, expect, test } from 'vitest';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { chanceOf, type ReviewScore, scoreReview, tableOf } from './score-review.ts';
import { reviewFleet, WRITTEN_FLEET, type WrittenPlan, writeFleet } from './written-fleet.ts';

const three = (_: string, value: unknown): unknown => (typeof value === 'number' ? Number(value.toFixed(3)) : value);

async function score(name: string, more: Partial<WrittenPlan>, seeds: number): Promise<ReviewScore> {
  const scores: ReviewScore[] = [];
  for (let seed = 1; seed <= seeds; seed++) {
    const plan = { ...WRITTEN_FLEET, ...more, seed };
    const fleet = writeFleet(plan);
    scores.push(scoreReview(plan, fleet, await reviewFleet(fleet)));
  }
  const sum = (pick: (of: ReviewScore) => number): number => scores.reduce((total, one) => total + pick(one), 0);
  const mean = (pick: (of: ReviewScore) => number): number => sum(pick) / scores.length;
  const told = {
    lanes: sum(({ lanes }) => lanes),
    covered: mean(({ covered }) => covered),
    levelCovered: mean(({ levelCovered }) => levelCovered),
    skill: mean(({ skill }) => skill),
    ceiling: mean(({ ceiling }) => ceiling),
    meanError: mean(({ meanError }) => meanError),
    told: mean((one) => one.told),
    truth: mean(({ truth }) => truth),
    late: {
      lanes: sum(({ late }) => late.lanes),
      found: sum(({ late }) => late.found),
      dated: sum(({ late }) => late.dated),
      covered: sum(({ late }) => late.covered),
      others: sum(({ late }) => late.others),
    },
  };
  console.log(name, JSON.stringify(told, three));
  return told;
}

/**
 * Files of fleets with known truth, through import, checks, derivation and fit. The bias that all analyzers of a fleet share
 * cannot be known, and is not zero where five are drawn at random: it bounds the skill that any fit can have. How far is
 * told beside it, by the same readings fitted with every hyperparameter known.
 */
describe('fleets written as files, through the whole review', () => {
  test.each([
    ['visits all year round', {}, 2, 0.8],
    ['set until the display shows the target', { setBy: 'display' } as const, 2, 0.85],
    ['winter only', { season: [330, 420] as const }, 2, 0.75],
    ['premix, CO2 targets', { burner: 'premix', quantity: 'co2' } as const, 2, 0.75],
    ['light oil, CO2 targets', { fuel: 'no2_oil', quantity: 'co2', co2maxRatio: 0.99 } as const, 2, 0.75],
    ['quarterly visits', { every: 0.25, visits: 16, season: [1, 60] as const }, 1, 0.6],
    ['O2 alone', { measuredCo2: false }, 2, 0.75],
    ['CO2 alone', { quantity: 'co2', measuredO2: false } as const, 1, 0.7],
    ['heavy-tailed rates', { rateFreedom: 3 }, 2, 0.75],
    ['two analyzers', { analyzers: 2 }, 2, 0.75],
    ['no as-left rows', { recordLeft: false }, 2, 0.85],
    ['twelve units', { units: 12 }, 8, 0.5],
    ['lopsided bands', { below: 0.4, above: 1.5 }, 2, 0.75],
  ] as const)('%s', async (name, more, seeds, least) => {
    const told = await score(name, more, seeds);
    expect(told.covered).toBeGreaterThan(0.92);
    expect(told.covered).toBeLessThan(0.98);
    // All levels of a fleet share what is not known of its analyzers: they are covered together or not.
    expect(told.levelCovered).toBeGreaterThan(0.9);
    expect(Math.abs(told.meanError)).toBeLessThan(0.03);
    expect(told.skill).toBeGreaterThan(Math.max(least, Math.min(0.85, 0.96 * told.ceiling)));
    expect(told.late.others).toBeLessThanOrEqual(0.005 * told.lanes);
  });
});

describe('drift that begins late', () => {
  test('one unit in ten stands still for five years: found, dated, covered, and the others are left alone', async () => {
    const more = { lateShare: 0.1, lateRate: 0.8, meanRate: 0.05, rateSd: 0.1 };
    const { covered, skill, late, lanes } = await score('a tenth begins late', more, 2);
    expect(covered).toBeGreaterThan(0.92);
    // The model allows for what this fleet never does: a drift that began before the last visit, which one reading cannot show.
    expect(covered).toBeLessThan(0.99);
    expect(late.found / late.lanes).toBeGreaterThan(0.9);
    expect(late.dated / late.found).toBeGreaterThan(0.8);
    // Two standard errors of a share of 0.95 among the lanes that there are.
    expect(late.covered / late.lanes).toBeGreaterThan(0.92 - 2 * Math.sqrt((0.95 * 0.05) / late.lanes));
    expect(late.others / (lanes - late.lanes)).toBeLessThan(0.02);
    // One rate a lane, or one that wanders alike in all, scores 0.69.
    expect(skill).toBeGreaterThan(0.78);
  });

  test('before any visit, the last one too: covered as promised, neither more nor less', async () => {
    const more = { lateShare: 0.1, lateRate: 0.8, lateVisit: 'any', meanRate: 0.05, rateSd: 0.1 } as const;
    const { covered, meanError, late, lanes } = await score('a tenth begins at any visit', more, 4);
    expect(covered).toBeGreaterThan(0.92);
    expect(covered).toBeLessThan(0.98);
    expect(Math.abs(meanError)).toBeLessThan(0.03);
    expect(late.found / late.lanes).toBeGreaterThan(0.75);
    expect(late.others / (lanes - late.lanes)).toBeLessThan(0.03);
  });
});

describe('a fleet without drift', () => {
  const PLAN = { ...WRITTEN_FLEET, meanRate: 0, rateSd: 0, wander: 0.1, below: 0.3, above: 0.35, adjustBeyond: 0.3 };

  test('of the fires raised no more stay inside than the list states; what grows nowhere is not raised', async () => {
    const sums = { raised: 0, stated: 0, inside: 0, variance: 0, grown: 0, lanes: 0 };
    for (let seed = 1; seed <= 3; seed++) {
      const plan = { ...PLAN, seed };
      const fleet = writeFleet(plan);
      const raised = tableOf(await reviewFleet(fleet), 'raise', 'raised');
      const [unit, fire, reason] = ['unit', 'fire', 'reason'].map((name) => textsOf(raised, name));
      const probability = numbersOf(raised, 'probability');
      sums.lanes += fleet.truth.length;
      for (let row = 0; row < raised.rows; row++) {
        if (!['out_of_tolerance', 'leaving_tolerance'].includes(textAt(reason, row))) {
          sums.grown++;
          continue;
        }
        const lane = fleet.truth.find((one) => one.unit === textAt(unit, row) && one.fire === textAt(fire, row));
        if (!lane) throw new Error('a fire that is not there');
        const chance = chanceOf(lane, plan, fleet.asOf);
        sums.raised++;
        sums.stated += 1 - probability[row];
        sums.inside += 1 - chance;
        sums.variance += chance * (1 - chance);
      }
    }
    console.log('without drift', JSON.stringify(sums, three));
    expect(sums.raised).toBeGreaterThan(20);
    expect(sums.inside).toBeLessThanOrEqual(sums.stated + 2 * Math.sqrt(sums.variance));
    expect(sums.grown / sums.lanes).toBeLessThanOrEqual(0.05);
  });
});
