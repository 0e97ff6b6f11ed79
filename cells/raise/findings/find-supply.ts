import { runningVerdict, staticVerdict } from '../../../shared/limits/supply-verdicts.ts';
import {
  checkSupplyDrop,
  checkSupplyMaximum,
  checkSupplyMinimum,
  supplyDropGrowing,
  supplyDropOver,
  supplyOverMaximum,
  supplyUnderMinimum,
} from '../../../shared/messages/raise.ts';
import { DAYS_PER_YEAR, writeDay } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import { closedBy } from './closing.ts';

const MEASURED = { probability: Number.NaN, byDate: Number.NaN, falseDiscoveryRate: Number.NaN, fire: '' } as const;

/** A static or running supply above the plate's maximum that no later reading has closed: a measured safety fact. */
export function findSupplyOverMaximum({ readings, supplyLimits }: Fleet): Finding[] {
  if (!supplyLimits) return [];
  const limitUnit = textsOf(supplyLimits, 'unit');
  const maximum = numbersOf(supplyLimits, 'supply_max_Pa');
  const [atRest, running] = [readings.number('supply_static_Pa'), readings.number('supply_running_Pa')];
  const [fuel, file] = [readings.text('fuel'), readings.text('source_file')];
  const line = readings.number('source_line');
  const pressure = (row: number): number =>
    (atRest[row] >= running[row] || !(running[row] > 0) ? atRest : running)[row];
  const findings: Finding[] = [];
  for (let limit = 0; limit < supplyLimits.rows; limit++) {
    const unit = textAt(limitUnit, limit);
    const judged = (readings.byUnit.get(unit) ?? []).map((row) => ({
      row,
      verdict: staticVerdict(pressure(row), maximum[limit]),
    }));
    const closers = judged.filter(({ row, verdict }) => verdict === 'within' && Number.isFinite(atRest[row]));
    const isClosed = closedBy(
      readings,
      closers.map(({ row }) => row),
    );
    const open = judged.findLast(({ row, verdict }) => verdict === 'over_maximum' && !isClosed(row))?.row;
    if (open === undefined) continue;
    findings.push({
      ...MEASURED,
      unit,
      fuel: fuel(open),
      reason: 'supply_over_maximum',
      evidence: supplyOverMaximum(pressure(open), maximum[limit], writeDay(readings.day[open]), file(open), line[open]),
      checkFirst: checkSupplyMaximum(),
      readingsUsed: judged.filter(({ verdict }) => verdict !== 'unknown').length,
      row: open,
      urgency: pressure(open) / maximum[limit],
    });
  }
  return findings;
}

/** What the supply cell found: running pressure under the plate's minimum, a drop over its limit, a drop that grows. */
export function findSupply(fleet: Fleet, fuelOf: (unit: string) => string): Finding[] {
  const { supply } = fleet;
  if (!supply) return [];
  const unit = textsOf(supply, 'unit');
  const running = numbersOf(supply, 'running_now_Pa');
  const minimum = numbersOf(supply, 'supply_min_Pa');
  const verdict = textsOf(supply, 'verdict');
  const rows = Array.from({ length: supply.rows }, (_, row) => row);
  const under = rows.filter((row) => runningVerdict(running[row], minimum[row]) === 'under_minimum');
  const over = rows.filter((row) => textAt(verdict, row) === 'over');
  const growing = rows.filter((row) => textAt(verdict, row) === 'growing');
  const whole = (row: number) => ({ unit: textAt(unit, row), fuel: fuelOf(textAt(unit, row)), fire: '' });
  return [
    ...under.map((row) => ({ ...whole(row), ...underMinimum(fleet, row) })),
    ...over.map((row) => ({ ...whole(row), ...dropFinding(fleet, row, 'supply_drop_over') })),
    ...growing.map((row) => ({ ...whole(row), ...dropFinding(fleet, row, 'supply_drop_growing') })),
  ];
}

type Judged = Omit<Finding, 'unit' | 'fuel' | 'fire'>;

function underMinimum({ supply }: Fleet, row: number): Judged {
  const number = (column: string): number => (supply ? numbersOf(supply, column)[row] : Number.NaN);
  const [running, minimum] = [number('running_now_Pa'), number('supply_min_Pa')];
  return {
    reason: 'supply_under_minimum',
    probability: Number.NaN,
    byDate: Number.NaN,
    falseDiscoveryRate: Number.NaN,
    evidence: supplyUnderMinimum(running, minimum, number('static_now_Pa'), writeDay(number('last_read_on'))),
    checkFirst: checkSupplyMinimum(),
    readingsUsed: number('readings_used'),
    urgency: minimum / running,
  };
}

function dropFinding({ supply, asOf }: Fleet, row: number, reason: 'supply_drop_over' | 'supply_drop_growing'): Judged {
  const number = (column: string): number => (supply ? numbersOf(supply, column)[row] : Number.NaN);
  const pattern = supply ? textAt(textsOf(supply, 'pattern'), row) : '';
  const facts = {
    dropPa: number('drop_now_Pa'),
    dropSdPa: number('drop_now_sd_Pa'),
    limitPa: number('drop_limit_Pa'),
    staticPa: number('static_now_Pa'),
    runningPa: number('running_now_Pa'),
    slopePa: number('drop_slope_Pa_per_year'),
    slopeLowerPa: number('slope_lower'),
    slopeUpperPa: number('slope_upper'),
    exceedsOn: writeDay(number('exceeds_on_50')),
    lastReadOn: writeDay(number('last_read_on')),
    readings: number('readings_used'),
    rule: supply ? textAt(textsOf(supply, 'limit_source'), row) === 'low_pressure_rule' : false,
  };
  const growing = reason === 'supply_drop_growing';
  const years = (number('exceeds_on_50') - asOf) / DAYS_PER_YEAR;
  return {
    reason,
    ...chanceOf(growing, number),
    falseDiscoveryRate: growing ? number('growth_false_discovery_rate') : Number.NaN,
    evidence: growing ? supplyDropGrowing(facts) : supplyDropOver(facts),
    checkFirst: checkSupplyDrop(pattern),
    readingsUsed: facts.readings,
    urgency: growing ? (Number.isFinite(years) ? -years : -100) : facts.dropPa / facts.limitPa,
  };
}

/** Of a growing drop: the even chance and its day where that is within reach, else the chance by the horizon. */
function chanceOf(growing: boolean, number: (column: string) => number): Pick<Finding, 'probability' | 'byDate'> {
  if (!growing) return { probability: Number.NaN, byDate: Number.NaN };
  const evenOn = number('exceeds_on_50');
  return Number.isFinite(evenOn)
    ? { probability: 0.5, byDate: evenOn }
    : { probability: number('probability_over_by_horizon'), byDate: number('horizon_on') };
}
