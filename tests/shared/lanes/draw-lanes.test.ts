import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawLaneKey } from '../../../shared/lanes/draw-lane-key.ts';
import { drawLanes } from '../../../shared/lanes/draw-lanes.ts';
import type { Lane, UnitLanes } from '../../../shared/lanes/lane.ts';
import { slotsOf } from '../../../shared/lanes/lane-slots.ts';
import { dayOf } from '../../../shared/quantities/dates.ts';

const AS_OF = dayOf(2026, 6, 1);

const lane = (given: Partial<Lane> = {}): Lane => ({
  fuel: 'natural_gas',
  fire: 'high',
  quantity: 'co2_pct',
  target: 8.8,
  lower: 8.4,
  upper: 9.2,
  readings: [
    { day: dayOf(2024, 3, 4), value: 8.9, asMeasured: 8.7, state: 'as_found' },
    { day: dayOf(2025, 3, 4), value: 8.5, asMeasured: 8.4, state: 'as_found' },
    { day: dayOf(2025, 3, 4) + 0.02, value: 8.8, asMeasured: 8.7, state: 'as_left' },
  ],
  path: [
    { day: dayOf(2025, 3, 4), level: 8.8, lower: 8.7, upper: 8.9 },
    { day: AS_OF, level: 8.55, lower: 8.3, upper: 8.8 },
    { day: AS_OF + 365, level: 8.35, lower: 7.9, upper: 8.8 },
  ],
  leavesOn: dayOf(2027, 2, 1),
  asOf: AS_OF,
  horizon: AS_OF + 365,
  ...given,
});

const unit = (lanes: readonly Lane[], given: Partial<UnitLanes> = {}): UnitLanes => ({
  unit: 'B-07',
  place: 'Laundry',
  lanes,
  ...given,
});

const dots = (svg: string, fill: RegExp): number => {
  const group = new RegExp(`<g fill="${fill.source}"[^>]*>(.*?)</g>`).exec(svg);
  return group ? group[1].split('<circle').length - 1 : 0;
};

describe('what a lane shows', () => {
  test.each(['small', 'large'] as const)('as found hollow, as left filled (%s)', (size) => {
    const svg = drawLanes(unit([lane()]), size);
    expect(dots(svg, /var\(--lane-paper, #ffffff\)/)).toBe(2);
    expect(dots(svg, /var\(--lane-ink, currentColor\)/)).toBe(1);
  });

  test('the date of leaving in the large picture, and in the words of both', () => {
    expect(drawLanes(unit([lane()]), 'large')).toContain('>2027-02-01</text>');
    expect(drawLanes(unit([lane()]), 'small')).toContain('as likely as not outside by 2027-02-01');
    expect(drawLanes(unit([lane({ leavesOn: Number.NaN })]), 'large')).not.toContain('--lane-leaving');
  });

  test('words for those who cannot see it', () => {
    const svg = drawLanes(unit([lane()]), 'small');
    expect(svg).toContain('<title>Fire lanes of B-07, Laundry</title>');
    expect(svg).toContain(
      'High fire on natural gas: 3 readings from 2024-03-04 to 2025-03-04, level now 8.55 % CO2, band 8.40 to 9.20 %',
    );
  });

  test('a lane is as tall as its band: twice the band, twice the height', () => {
    const [narrow, wide] = slotsOf(
      [lane(), lane({ fire: 'low', lower: 8, upper: 9.6, readings: [], path: [] })],
      'large',
      0,
    );
    const height = ({ lane: { lower, upper }, y }: typeof narrow): number => y(lower) - y(upper);
    expect(height(wide) / height(narrow)).toBeCloseTo(2, 9);
    expect(narrow.bottom).toBeLessThan(wide.top);
  });

  test('the supply hangs below the lanes on the same time axis', () => {
    const day = dayOf(2025, 3, 4);
    const svg = drawLanes(
      unit([lane()], { supply: { limitPa: 249, readings: [{ day, dropPa: 180 }], path: [] } }),
      'large',
    );
    const column = Number(/<path d="M([\d.]+) [\d.]+h5.2V/.exec(svg)?.[1]);
    expect(column).toBeGreaterThan(0);
    expect(svg).toContain('limit 249 Pa');
    const xs = [...svg.matchAll(/<circle cx="([\d.]+)"/g)].map(([, x]) => Number(x));
    expect(xs.some((x) => Math.abs(x - (column + 2.6)) < 0.02)).toBe(true);
  });
});

describe('nothing from a file reaches the page as markup, and nothing unknown is drawn as a number', () => {
  test('text is escaped', () => {
    const svg = drawLanes(
      unit([lane({ fire: '<b>', fuel: '"&' })], { unit: '<script>x</script>', place: "'" }),
      'large',
    );
    expect(svg).not.toMatch(/<script|<b>/);
    expect(svg).toContain('&lt;script&gt;');
  });

  test('no history at all is said in words', () => {
    expect(drawLanes(unit([]), 'small')).toContain('No readings of B-07 can be drawn.');
  });

  const number = fc.oneof(fc.double({ min: -50, max: 50 }), fc.constant(Number.NaN));
  const day = fc.oneof(fc.integer({ min: 0, max: 30_000 }), fc.constant(Number.NaN));
  const anyLane = fc.record({
    fuel: fc.string(),
    fire: fc.constantFrom('high', 'low', 'single', 'odd'),
    quantity: fc.constantFrom('o2_pct' as const, 'co2_pct' as const),
    target: number,
    lower: number,
    upper: number,
    readings: fc.array(
      fc.record({ day: fc.integer({ min: 0, max: 30_000 }), value: number, asMeasured: number, state: fc.string() }),
      { maxLength: 5 },
    ),
    path: fc.array(
      fc.record({ day: fc.integer({ min: 0, max: 30_000 }), level: number, lower: number, upper: number }),
      {
        maxLength: 5,
      },
    ),
    leavesOn: day,
    asOf: fc.constant(AS_OF),
    horizon: day,
  });

  test('whatever comes in, no NaN or Infinity goes out', () => {
    fc.assert(
      fc.property(
        fc.array(anyLane, { maxLength: 3 }),
        fc.constantFrom('small' as const, 'large' as const),
        (lanes, size) => {
          const markup = drawLanes(unit(lanes), size).replaceAll(/<(title|desc)>.*?<\/\1>/gs, '');
          expect(markup.replaceAll(/>[^<]*</g, '><')).not.toMatch(/NaN|Infinity|undefined|e[-+]\d/);
        },
      ),
      { seed: 20261, numRuns: 150 },
    );
  });
});

test('the key names every mark', () => {
  const key = drawLaneKey();
  for (const word of ['as found', 'as left', 'band', '95 % interval', 'supply drop']) expect(key).toContain(word);
});
