import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../../shared/table/table.ts';

/** Invented readings, any number of them, always the same ones. */
export function inventedReadings(rows: number): Table {
  const noise = (seed: number) => (row: number) => (((row * 2654435761 + seed * 40503) >>> 0) % 1000) / 1000;
  const number = (unit: string, low: number, high: number, seed: number): Column => {
    const at = noise(seed);
    return numberColumn(
      unit,
      Float64Array.from({ length: rows }, (_, row) => (row % 17 === seed ? Number.NaN : low + (high - low) * at(row))),
    );
  };
  const units = Array.from({ length: 26 }, (_, i) => `NOR-${i + 1}`);
  const codes = (count: number, step: number): Int32Array =>
    Int32Array.from({ length: rows }, (_, row) => Math.floor(row / step) % count);
  const co = number('[ppm]', 4, 120, 3);
  return makeTable([
    ['unit', { kind: 'text', codes: codes(26, 40), levels: units }],
    [
      'taken_at',
      { kind: 'date', values: Float64Array.from({ length: rows }, (_, row) => 16_000 + (row % 40) * 97 + 0.4) },
    ],
    ['fire', { kind: 'text', codes: codes(2, 1), levels: ['high', 'low'] }],
    ['state', { kind: 'text', codes: codes(2, 2), levels: ['as_found', 'as_left'] }],
    ['o2_pct', number('%', 2.5, 7.5, 1)],
    ['co2_pct', number('%', 7.8, 10.4, 2)],
    [
      'co_ppm',
      co.kind === 'number'
        ? { ...co, bounds: Int8Array.from({ length: rows }, (_, row) => (row % 90 === 5 ? 1 : 0)) }
        : co,
    ],
    ['flue_C', number('Cel', 48, 212, 4)],
    ['supply_drop_Pa', number('Pa', 80, 1300, 5)],
    ['efficiency_gross_pct', number('%', 79, 93, 6)],
  ]);
}

export function inventedRaised(): Table {
  const rows = INVENTED_RAISED;
  const text = (key: 'unit' | 'fuel' | 'fire' | 'reason' | 'tier' | 'evidence' | 'check_first'): Column =>
    textColumn(rows.map((row) => row[key]));
  const numbers = (key: 'probability' | 'false_discovery_rate' | 'readings_used'): Column =>
    numberColumn('1', Float64Array.from(rows.map((row) => row[key])));
  return makeTable([
    ['rank', numberColumn('1', Float64Array.from(rows.map((_, i) => i + 1)))],
    ['unit', text('unit')],
    ['fuel', text('fuel')],
    ['fire', text('fire')],
    ['reason', text('reason')],
    ['tier', text('tier')],
    ['probability', numbers('probability')],
    ['by_date', { kind: 'date', values: Float64Array.from(rows.map(({ by }) => by)) }],
    ['false_discovery_rate', numbers('false_discovery_rate')],
    ['evidence', text('evidence')],
    ['check_first', text('check_first')],
    ['readings_used', numbers('readings_used')],
  ]);
}

const RAISED = {
  fuel: 'natural_gas',
  fire: 'high',
  probability: Number.NaN,
  by: Number.NaN,
  false_discovery_rate: 0,
  readings_used: 9,
};
const INVENTED_RAISED = [
  {
    ...RAISED,
    unit: 'NOR-7',
    reason: 'co_high',
    tier: 'safety',
    evidence:
      'CO was 412 ppm at high fire on 2026-10-02, air-free 520 ppm, above the limit of 400 ppm; no later reading at this fire is below it.',
    check_first: 'Keep the unit off until a qualified person has looked: combustion air, heat exchanger, venting.',
    readings_used: 1,
  },
  {
    ...RAISED,
    unit: 'NOR-12',
    reason: 'supply_drop_growing',
    tier: 'supply',
    probability: 0.81,
    by: 20_900,
    false_discovery_rate: 0.07,
    evidence:
      'The drop at high fire grows by 28 ± 9 Pa a year; it is 226 Pa now and passes 249 Pa by 2027-10-04 as likely as not.',
    check_first: 'Filter or strainer, half-shut cock, other units firing on the same line.',
    readings_used: 11,
  },
  {
    ...RAISED,
    unit: 'NOR-3',
    reason: 'leaving_tolerance',
    tier: 'tolerance',
    probability: 0.74,
    by: 20_785,
    false_discovery_rate: 0.12,
    evidence: 'O2 at high fire rises by 0.31 ± 0.08 points a year; it is 4.6 % now, band 3.5 to 4.8 %.',
    check_first: 'Linkage wear and slip, then re-tune at both fires.',
  },
  {
    ...RAISED,
    unit: 'NOR-3',
    fire: 'low',
    reason: 'scatter_growing',
    tier: 'tolerance',
    probability: 0.6,
    by: 20_785,
    false_discovery_rate: 0.15,
    evidence: 'As-found readings at low fire scatter twice as widely since 2023.',
    check_first: 'Play in the linkage: approach low fire from above and from below.',
  },
  {
    ...RAISED,
    unit: 'NOR-20',
    reason: 'no_data',
    tier: 'data',
    fire: '',
    evidence: 'No reading since 2023-04-11.',
    check_first: 'Was a visit made and not recorded?',
    readings_used: 0,
  },
];
