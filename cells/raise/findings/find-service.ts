import { checkReturned, notReturned } from '../../../shared/messages/raise.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import { closedBy } from './closing.ts';

/** Units that a visit left out of service (set point, rate, caps or access) with no later reading that says otherwise. */
export function findNotReturned({ readings, asOf }: Fleet): Finding[] {
  const returned = readings.text('returned_to_service');
  const [fuel, technician, file] = ['fuel', 'technician', 'source_file'].map((column) => readings.text(column));
  const line = readings.number('source_line');
  const findings: Finding[] = [];
  for (const [unit, rows] of readings.byUnit) {
    const isBack = closedBy(
      readings,
      rows.filter((row) => returned(row) === 'yes'),
    );
    const open = rows.findLast((row) => returned(row) === 'no' && !isBack(row));
    if (open === undefined) continue;
    findings.push({
      unit,
      fuel: fuel(open),
      fire: '',
      reason: 'not_returned_to_service',
      probability: Number.NaN,
      byDate: Number.NaN,
      falseDiscoveryRate: Number.NaN,
      evidence: notReturned(writeDay(readings.day[open]), technician(open), file(open), line[open]),
      checkFirst: checkReturned(),
      readingsUsed: rows.filter((row) => returned(row) === 'yes' || returned(row) === 'no').length,
      urgency: asOf - readings.day[open],
    });
  }
  return findings;
}
