import type { RowPage } from '../../shared/cell-state.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';

/** One reason for which a unit is raised, as a person reads it. */
export interface RaisedFinding {
  /** In the raised table. */
  readonly row: number;
  readonly rank: number;
  readonly fuel: string;
  readonly fire: string;
  readonly reason: string;
  readonly tier: string;
  /** 0..1, NaN for a measured fact. */
  readonly probability: number;
  /** Days since 1970-01-01, NaN where none. */
  readonly byDate: number;
  readonly falseDiscoveryRate: number;
  readonly evidence: string;
  readonly checkFirst: string;
  readonly readingsUsed: number;
}

/** A unit with everything it is raised for, in order of rank: one tag, one visit. */
export interface RaisedUnit {
  readonly unit: string;
  /** That of its first finding: the worst. */
  readonly tier: string;
  readonly findings: readonly RaisedFinding[];
}

/** Groups the rows of the raised table by unit; units stand in order of their best rank. */
export function raisedUnits({ columns }: Pick<RowPage, 'columns'>, rows: number): RaisedUnit[] {
  const table = { rows, columns };
  const text = (name: string): ((row: number) => string) => {
    const column = textsOf(table, name);
    return (row) => textAt(column, row);
  };
  const number = (name: string): Float64Array => numbersOf(table, name);
  const [unit, fuel, fire, reason, tier] = ['unit', 'fuel', 'fire', 'reason', 'tier'].map(text);
  const [evidence, check] = ['evidence', 'check_first'].map(text);
  const [rank, probability, byDate] = ['rank', 'probability', 'by_date'].map(number);
  const [rate, used] = ['false_discovery_rate', 'readings_used'].map(number);
  const order = Array.from({ length: rows }, (_, row) => row).sort((a, b) => rank[a] - rank[b]);
  const units = new Map<string, RaisedFinding[]>();
  for (const row of order) {
    const findings = units.get(unit(row)) ?? [];
    units.set(unit(row), findings);
    findings.push({
      row,
      rank: rank[row],
      fuel: fuel(row),
      fire: fire(row),
      reason: reason(row),
      tier: tier(row),
      probability: probability[row],
      byDate: byDate[row],
      falseDiscoveryRate: rate[row],
      evidence: evidence(row),
      checkFirst: check(row),
      readingsUsed: used[row],
    });
  }
  return [...units].map(([name, findings]) => ({ unit: name, tier: findings[0].tier, findings }));
}

/** Units under the head of their tier, in the order in which the tiers first appear. */
export function byTier(units: readonly RaisedUnit[]): (readonly [string, readonly RaisedUnit[]])[] {
  const tiers = new Map<string, RaisedUnit[]>();
  for (const unit of units) tiers.set(unit.tier, [...(tiers.get(unit.tier) ?? []), unit]);
  return [...tiers];
}
