import { airSchema } from '../schemas/drift.ts';
import type { Table } from '../table/table.ts';
import type { DriftRow } from './judge-drift.ts';
import { tableOfRecords } from './table-of-records.ts';

export type AirVerdict = 'outside' | 'leaving' | 'inside' | 'unknown';

/** A chance of leaving from which a lane is called leaving: more likely than not. */
const EVEN = 0.5;

/** Of a judged lane: where it stands now, else whether it is more likely than not to leave by the horizon. */
export function airVerdict({ judged }: DriftRow): AirVerdict {
  if (!Number.isFinite(judged.outBy)) return 'unknown';
  if (judged.marginNow < 0) return 'outside';
  return judged.outBy >= EVEN ? 'leaving' : 'inside';
}

/** A fitted lane judged in both airs. */
export interface AirPair {
  readonly reference: DriftRow;
  readonly measured: DriftRow;
}

/** Pairs the rows of lanes that were judged in both airs; `other` are those in the air that the fit is not made in. */
export function airPairs(rows: readonly DriftRow[], other: readonly DriftRow[], referenceAir: boolean): AirPair[] {
  const nameOf = ({ unit, fuel, fire }: DriftRow): string => [unit, fuel, fire].join('\u0000');
  const byName = new Map(other.flatMap((row) => (row.lane < 0 ? [] : [[nameOf(row), row] as const])));
  return rows.flatMap((row) => {
    const twin = row.lane < 0 ? undefined : byName.get(nameOf(row));
    if (!twin) return [];
    return referenceAir ? { reference: row, measured: twin } : { reference: twin, measured: row };
  });
}

export function tableOfAir(pairs: readonly AirPair[]): Table {
  return tableOfRecords(
    airSchema,
    pairs.map(({ reference, measured }) => ({
      unit: reference.unit,
      fuel: reference.fuel,
      fire: reference.fire,
      quantity: reference.band.quantity,
      slope_reference_air: reference.state.rate,
      slope_as_measured: measured.state.rate,
      probability_reference_air: reference.judged.outBy,
      probability_as_measured: measured.judged.outBy,
      verdict_reference_air: airVerdict(reference),
      verdict_as_measured: airVerdict(measured),
    })),
  );
}
