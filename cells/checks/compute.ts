import type { CellContext, CellResult, Inputs, Remark } from '../../shared/cell.ts';
import { ownFuels } from '../../shared/fuels/own-fuels.ts';
import * as say from '../../shared/messages/checks.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { boundsOf, numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { type Applied, applyFindings } from './apply-findings.ts';
import { checkRows } from './check-rows.ts';
import { CHECKS, type Severity } from './checks.ts';
import type { Finding } from './finding.ts';
import { Gatherer } from './gather.ts';
import type { ChecksParameters } from './parameters.ts';
import { checkAnalyzers } from './rules/analyzers.ts';
import { checkChecksums } from './rules/checksums.ts';
import { checkEfficiency } from './rules/efficiency.ts';
import { checkHabits } from './rules/habits.ts';
import { checkHistory } from './rules/history.ts';
import { checkRanges } from './rules/ranges.ts';
import { checkTwins } from './rules/twins.ts';
import { checkValues } from './rules/values.ts';
import { checkVisits } from './rules/visits.ts';
import { shown } from './shown.ts';
import { countsTable, findingsTable, repairsTable, touchedTable } from './tables.ts';

/** Tables: accepted (as the readings cell's, checked), findings, touched, repairs, counts. */
export interface ChecksResult extends CellResult {
  /** Readings that some check of a severity names. */
  readonly bySeverity: Readonly<Record<Severity, number>>;
  readonly lines: number;
  readonly remarks: readonly Remark[];
}

const RULES = [
  checkValues,
  checkRanges,
  checkChecksums,
  checkEfficiency,
  checkVisits,
  checkHistory,
  checkTwins,
  checkAnalyzers,
  checkHabits,
];

export async function compute(
  parameters: ChecksParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<ChecksResult>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  if (!readings) return fail(say.noReadings(parameters.readings));
  const register = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables;
  const tables = { units: register?.['units'], supplyLimits: register?.['supply-limits'] };
  const rows = checkRows(readings, tables, ownFuels(parameters.fuels));
  const gatherer = new Gatherer(rows, new Set(parameters.skip));
  for (const [i, rule] of RULES.entries()) {
    rule(rows, gatherer.report);
    context.progress((i + 1) / RULES.length);
    await context.pause();
  }
  const findings = gatherer.findings();
  const applied = applyFindings(readings, findings, parameters.suspects);
  const bySeverity = { impossible: 0, suspect: 0, note: 0 };
  for (const severity of ['impossible', 'suspect', 'note'] as const)
    bySeverity[severity] = new Set(
      findings.filter(({ check }) => CHECKS[check].severity === severity).flatMap(({ rows }) => rows),
    ).size;
  return succeed({
    tables: {
      accepted: applied.accepted,
      findings: findingsTable(readings, findings, applied),
      touched: touchedTable(readings, findings, applied),
      repairs: repairsTable(readings, findings),
      counts: countsTable(findings),
    },
    bySeverity,
    lines: findings.length,
    remarks: remarksOf(readings, findings, applied, parameters.suspects),
  });
}

function remarksOf(readings: Table, findings: readonly Finding[], applied: Applied, suspects: 'in' | 'out'): Remark[] {
  const dangers = [
    ...applied.highCoWithout.map((row) => danger(readings, findings, row, 'impossible', say.highCoValueOut)),
    ...applied.keptForCo.map((row) => danger(readings, findings, row, 'suspect', say.highCoKept)),
  ];
  if (applied.suspectRows === 0) return dangers;
  const text =
    suspects === 'in'
      ? say.suspectsIn(applied.suspectRows)
      : say.suspectsOut(applied.suspectRows - applied.keptForCo.length);
  return [...dangers, { severity: 'warning', text }];
}

function danger(
  readings: Table,
  findings: readonly Finding[],
  row: number,
  severity: Severity,
  sentence: (unit: string, day: string, co: string, finding: string) => string,
): Remark {
  const found = findings.find(({ check, rows }) => CHECKS[check].severity === severity && rows.includes(row));
  const unit = textAt(textsOf(readings, 'unit'), row);
  const name = numbersOf(readings, 'co_ppm')[row] >= 0 ? 'co_ppm' : 'co_air_free_ppm';
  const co = `${boundsOf(readings, name)[row] > 0 ? '>' : ''}${shown(numbersOf(readings, name)[row], 0)}`;
  const day = writeDay(numbersOf(readings, 'taken_at')[row]);
  return { severity: 'danger', text: sentence(unit, day, co, (found?.sentence ?? '').replace(/\.$/, '')) };
}
