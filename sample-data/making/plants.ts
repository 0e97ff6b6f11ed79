import { calendar } from './calendar.ts';
import type { FireName } from './unit-plan.ts';

/** A planted drift: from a day on, the O2 at reference air moves by so much a year, and from another day on nobody turns the screw. */
export interface PlantedDrift {
  readonly unit: string;
  readonly fire: FireName;
  readonly from: number;
  readonly o2PerYear: number;
  readonly leftAloneFrom: number;
  readonly cause: string;
}

/** A planted growth of the supply drop at high fire, in inches of water column a year. */
export interface PlantedDrop {
  readonly unit: string;
  readonly from: number;
  readonly inwcPerYear: number;
  readonly cause: string;
}

/** Everything that was planted, in one place: the README of the sample tells it as known answers. */
export const PLANTS = {
  drifts: [
    {
      unit: 'IRO-1',
      fire: 'high',
      from: calendar.day('2015-01-01'),
      o2PerYear: 0.45,
      leftAloneFrom: calendar.day('2024-12-01'),
      cause: 'worn linkage',
    },
    {
      unit: 'EMB-2',
      fire: 'high',
      from: calendar.day('2015-01-01'),
      o2PerYear: -0.42,
      leftAloneFrom: calendar.day('2024-12-01'),
      cause: 'lint on the fan wheel',
    },
    {
      unit: 'EMB-2',
      fire: 'low',
      from: calendar.day('2015-01-01'),
      o2PerYear: -0.1,
      leftAloneFrom: calendar.day('2024-12-01'),
      cause: 'lint on the fan wheel',
    },
    {
      unit: 'COB-3',
      fire: 'low',
      from: calendar.day('2015-01-01'),
      o2PerYear: 0.35,
      leftAloneFrom: calendar.day('2024-12-01'),
      cause: 'ratio control drifting',
    },
  ] as readonly PlantedDrift[],
  drops: [
    { unit: 'GUL-2', from: calendar.day('2018-05-15'), inwcPerYear: 0.068, cause: 'gas filter filling up' },
    { unit: 'HUT-3', from: calendar.day('2016-05-15'), inwcPerYear: 0.055, cause: 'regulator drooping' },
  ] as readonly PlantedDrop[],
  /** How far each analyzer reads O2 high, %. */
  analyzers: { 'An-203': 0.04, 'An-217': -0.06, 'An-305': 0.05, 'An-311': -0.04, 'An-342': 0.5 } as Readonly<
    Record<string, number>
  >,
  replaced: { unit: 'HUT-2', on: calendar.day('2021-07-14') },
  openCo: { unit: 'DRU-2', fire: 'high', coPpm: '460' },
  closedCo: { unit: 'BRI-2', fire: 'high', year: 2022, coPpm: '>4000' },
} as const;
