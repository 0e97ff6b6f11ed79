import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { UnitSupply } from './supply-readings.ts';

/** 1 in. w.c. (conventional, 249.08891 Pa): the rule of thumb for the drop behind low-pressure service. */
export const LOW_PRESSURE_DROP_LIMIT_PA = 249.08891;
/** Above this static pressure (14 in. w.c.) service is not low-pressure and the rule of thumb does not hold. */
export const LOW_PRESSURE_STATIC_PA = 3487.2;

/** Of the rating plate and the register, pascals; NaN where not known. */
export interface SupplyLimits {
  readonly minimum: number;
  readonly maximum: number;
  readonly drop: number;
}

export type LimitSource = '' | 'register' | 'low_pressure_rule';

interface DropLimit {
  /** Pascals; NaN where none is known. */
  readonly limit: number;
  readonly limitSource: LimitSource;
}

/** The register's limit, else 1 in. w.c. where both the plate and the static readings are those of low-pressure service. */
export function dropLimitOf(unit: UnitSupply, limits: SupplyLimits | undefined): DropLimit {
  if (limits && Number.isFinite(limits.drop)) return { limit: limits.drop, limitSource: 'register' };
  const highest = Math.max(...unit.fixed.filter(Number.isFinite), limits?.maximum ?? Number.NaN);
  const seen = unit.fixed.filter(Number.isFinite);
  const low = seen.length > 0 && Math.max(...seen) <= LOW_PRESSURE_STATIC_PA && !(highest > 2 * LOW_PRESSURE_STATIC_PA);
  return low
    ? { limit: LOW_PRESSURE_DROP_LIMIT_PA, limitSource: 'low_pressure_rule' }
    : { limit: Number.NaN, limitSource: '' };
}

/** The plate and the limit of the drop of each unit that the register's `supply-limits` table knows, pascals. */
export function supplyLimitsOf(table: Table | undefined): Map<string, SupplyLimits> {
  const limits = new Map<string, SupplyLimits>();
  if (!table) return limits;
  const unit = textsOf(table, 'unit');
  const [minimum, maximum, drop] = ['supply_min_Pa', 'supply_max_Pa', 'drop_limit_Pa'].map((name) =>
    numbersOf(table, name),
  );
  for (let row = 0; row < table.rows; row++)
    limits.set(textAt(unit, row), { minimum: minimum[row], maximum: maximum[row], drop: drop[row] });
  return limits;
}
