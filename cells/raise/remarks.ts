import type { Remark } from '../../shared/cell.ts';
import { cautionCo, cautionOldReadings } from '../../shared/messages/cautions.ts';
import {
  analyzerBiased,
  analyzersConfounded,
  bandsByDefault,
  coLimitUsed,
  expectedInside,
  fleetMonth,
  levelsTooVague,
  platesMissing,
} from '../../shared/messages/raise-remarks.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Finding } from './finding.ts';
import { vagueLanes } from './findings/find-tolerance.ts';
import type { FleetMonth } from './findings/fleet-months.ts';
import { coCloseToLimit } from './findings/near-limit.ts';
import type { Fleet } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';

/** What must be said beside the list, the gravest first: cautions, analyzers before units, expected errors, defaults. */
export function remarksOf(
  fleet: Fleet,
  parameters: RaiseParameters,
  ranked: readonly Finding[],
  expected: { readonly out: number; readonly leaving: number },
  skip: (unit: string) => boolean,
  months: readonly FleetMonth[],
): Remark[] {
  const of = (reason: Finding['reason']): number => ranked.filter((finding) => finding.reason === reason).length;
  const co = of('co_high') + of('co_over_range');
  const remark = (severity: Remark['severity'], text: string): Remark[] => (text === '' ? [] : [{ severity, text }]);
  return [
    ...remark('danger', co > 0 ? cautionCo() : ''),
    ...remark('warning', coCloseToLimit(fleet, parameters, skip)),
    ...months.map(
      ({ month, units, leanerO2 }): Remark => ({ severity: 'warning', text: fleetMonth(month, units, leanerO2) }),
    ),
    ...analyzerRemarks(fleet),
    ...remark('note', expectedInside('out of tolerance', of('out_of_tolerance'), expected.out)),
    ...remark('note', expectedInside('leaving tolerance', of('leaving_tolerance'), expected.leaving)),
    ...remark('note', levelsTooVague(vagueLanes(fleet))),
    ...remark('note', coLimitUsed(parameters.coLimitPpm, parameters.coBasis)),
    ...remark('note', bandsByDefault(...defaultBands(fleet))),
    ...remark('note', platesMissing(unitsWithoutPlate(fleet))),
    ...remark('note', cautionOldReadings()),
  ];
}

function analyzerRemarks({ instruments }: Fleet): Remark[] {
  if (!instruments) return [];
  const [name, verdict] = [textsOf(instruments, 'analyzer'), textsOf(instruments, 'verdict')];
  const column = (of: string) => numbersOf(instruments, of);
  const [o2, o2Sd, readings] = ['o2_bias_pct', 'o2_bias_pct_sd', 'readings'].map(column);
  const rows = Array.from({ length: instruments.rows }, (_, row) => row);
  const biased = rows.filter((row) => textAt(verdict, row) === 'biased');
  const confounded = rows.filter((row) => textAt(verdict, row) === 'confounded');
  return [
    ...biased.map((row) => ({
      severity: 'warning' as const,
      text: analyzerBiased(textAt(name, row), o2[row], o2Sd[row], readings[row]),
    })),
    ...(confounded.length > 0
      ? [
          {
            severity: 'warning' as const,
            text: analyzersConfounded(
              confounded
                .map((row) => textAt(name, row))
                .sort()
                .join(', '),
            ),
          },
        ]
      : []),
  ];
}

/** Lanes judged by a default band, and all lanes with one. */
function defaultBands({ drift }: Fleet): [number, number] {
  if (!drift) return [0, 0];
  const source = textsOf(drift, 'band_source');
  const sources = Array.from({ length: drift.rows }, (_, row) => textAt(source, row)).filter((text) => text !== '');
  return [sources.filter((text) => text === 'class_band' || text === 'as_left').length, sources.length];
}

/** Units with a supply reading and no plate to judge it by. */
function unitsWithoutPlate({ supply }: Fleet): number {
  if (!supply) return 0;
  const [minimum, maximum] = [numbersOf(supply, 'supply_min_Pa'), numbersOf(supply, 'supply_max_Pa')];
  const running = numbersOf(supply, 'running_now_Pa');
  return Array.from(running).filter(
    (pressure, row) => Number.isFinite(pressure) && Number.isNaN(minimum[row]) && Number.isNaN(maximum[row]),
  ).length;
}
