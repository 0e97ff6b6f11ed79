import { checkSign } from '../../../shared/messages/raise.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { type Finding, REASONS, type Reason } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';

const SIGNS: readonly Reason[] = ['flue_temperature_rising', 'scatter_growing', 'returns_quickly'];

/** Signs that are no drift of a level, each with its own test, kept where the false discovery rate allows. */
export function findSigns({ signs }: Fleet, parameters: RaiseParameters, skip: (unit: string) => boolean): Finding[] {
  if (!signs) return [];
  const [unit, fuel, fire, reason, evidence] = ['unit', 'fuel', 'fire', 'reason', 'evidence'].map((name) =>
    textsOf(signs, name),
  );
  const rate = numbersOf(signs, 'false_discovery_rate');
  const used = numbersOf(signs, 'readings_used');
  return Array.from({ length: signs.rows }, (_, row) => row).flatMap((row) => {
    const named = REASONS.find((known) => known === textAt(reason, row));
    if (!named || !SIGNS.includes(named) || !(rate[row] <= parameters.falseDiscoveryRate) || skip(textAt(unit, row)))
      return [];
    return [
      {
        unit: textAt(unit, row),
        fuel: textAt(fuel, row),
        fire: textAt(fire, row),
        reason: named,
        probability: Number.NaN,
        byDate: Number.NaN,
        falseDiscoveryRate: rate[row],
        evidence: textAt(evidence, row),
        checkFirst: checkSign(named),
        readingsUsed: used[row],
        urgency: -rate[row],
      },
    ];
  });
}
