import { raisedSchema } from '../../shared/schemas/raised.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import { type Finding, REASONS, TIER_OF, TIERS } from './finding.ts';

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Tier by tier, reason by reason, the more urgent first; what is equally urgent goes to the unit with more at stake
 * (`weightOf`: its fuel a year, kWh, NaN where unknown), then by name, so that the order is the same everywhere.
 */
export function rankFindings(findings: readonly Finding[], weightOf: (unit: string) => number): Finding[] {
  const tier = ({ reason }: Finding): number => TIERS.indexOf(TIER_OF[reason]);
  const weight = ({ unit }: Finding): number => (Number.isFinite(weightOf(unit)) ? weightOf(unit) : 0);
  return [...findings].sort(
    (a, b) =>
      tier(a) - tier(b) ||
      REASONS.indexOf(a.reason) - REASONS.indexOf(b.reason) ||
      roughly(b.urgency) - roughly(a.urgency) ||
      weight(b) - weight(a) ||
      byCodeUnit(a.unit, b.unit) ||
      byCodeUnit(a.fuel, b.fuel) ||
      byCodeUnit(a.fire, b.fire),
  );
}

/** Urgencies that differ by less than a hundredth are equal: no list should turn on the third digit of a chance. */
const roughly = (urgency: number): number => Math.round(Math.min(Math.max(urgency, -1e12), 1e12) * 100);

/** The raised table: one row a finding, rank 1 first. */
export function raisedTable(ranked: readonly Finding[]): Table {
  const numbers = (of: (finding: Finding) => number): Column => numberColumn('1', Float64Array.from(ranked, of));
  const texts = (of: (finding: Finding) => string): Column => textColumn(ranked.map(of));
  return tableOf(
    raisedSchema,
    ranked.length,
    new Map<string, Column>([
      [
        'rank',
        numberColumn(
          '1',
          Float64Array.from(ranked, (_, place) => place + 1),
        ),
      ],
      ['unit', texts(({ unit }) => unit)],
      ['fuel', texts(({ fuel }) => fuel)],
      ['fire', texts(({ fire }) => fire)],
      ['reason', texts(({ reason }) => reason)],
      ['tier', texts(({ reason }) => TIER_OF[reason])],
      ['probability', numbers(({ probability }) => probability)],
      ['by_date', { kind: 'date', values: Float64Array.from(ranked, ({ byDate }) => byDate) }],
      ['false_discovery_rate', numbers(({ falseDiscoveryRate }) => falseDiscoveryRate)],
      ['evidence', texts(({ evidence }) => evidence)],
      ['check_first', texts(({ checkFirst }) => checkFirst)],
      ['readings_used', numbers(({ readingsUsed }) => readingsUsed)],
    ]),
  );
}
