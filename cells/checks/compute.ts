import type { CellContext, CellResult, Inputs, Remark } from '../../shared/cell.ts';
import * as say from '../../shared/messages/checks.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { checkCountsSchema, findingsSchema } from '../../shared/schemas/findings.ts';
import { numberColumn, numbersOf, takeRows, textAt, textColumn, textsOf } from '../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { type Applied, applyFindings } from './apply-findings.ts';
import { checkRows } from './check-rows.ts';
import { CHECKS, type CheckName, type Severity } from './checks.ts';
import type { Finding } from './finding.ts';
import type { ChecksParameters } from './parameters.ts';
import { checkAnalyzers } from './rules/analyzers.ts';
import { checkChecksums } from './rules/checksums.ts';
import { checkHistory, checkTwins } from './rules/history.ts';
import { checkValues } from './rules/values.ts';
import { checkVisits } from './rules/visits.ts';
import { shown } from './shown.ts';

/** Tables: accepted (as the readings cell's, checked), findings, counts. */
export interface ChecksResult extends CellResult {
  readonly bySeverity: Readonly<Record<Severity, number>>;
  readonly remarks: readonly Remark[];
}

const RULES = [checkValues, checkChecksums, checkVisits, checkHistory, checkTwins, checkAnalyzers];
const SEVERITIES: readonly Severity[] = ['impossible', 'suspect', 'note'];

export async function compute(
  parameters: ChecksParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<ChecksResult>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  if (!readings) return fail(say.noReadings(parameters.readings));
  const register = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables['units'];
  const rows = checkRows(readings, register);
  const found: Finding[] = [];
  const skip = new Set(parameters.skip);
  for (const [i, rule] of RULES.entries()) {
    rule(rows, (check, row, columns, sentence) => {
      if (!skip.has(check)) found.push({ check, row, columns, sentence });
    });
    context.progress((i + 1) / RULES.length);
    await context.pause();
  }
  const rank = (check: CheckName): number => SEVERITIES.indexOf(CHECKS[check].severity);
  const findings = found.sort((a, b) => rank(a.check) - rank(b.check) || a.row - b.row || (a.check < b.check ? -1 : 1));
  const applied = applyFindings(readings, findings, parameters.suspects);
  const bySeverity = { impossible: 0, suspect: 0, note: 0 };
  for (const { check } of findings) bySeverity[CHECKS[check].severity]++;
  return succeed({
    tables: {
      accepted: applied.accepted,
      findings: findingsTable(readings, findings, applied.effects),
      counts: countsTable(findings),
    },
    bySeverity,
    remarks: remarksOf(readings, findings, applied, parameters.suspects),
  });
}

function findingsTable(readings: Table, findings: readonly Finding[], effects: readonly string[]): Table {
  const rows = Int32Array.from(findings, ({ row }) => row);
  const own: Readonly<Record<string, Column>> = {
    severity: textColumn(findings.map(({ check }) => CHECKS[check].severity)),
    check: textColumn(findings.map(({ check }) => check)),
    finding: textColumn(findings.map(({ sentence }) => sentence)),
    action: textColumn(findings.map(({ check }) => CHECKS[check].action)),
    columns: textColumn(findings.map(({ columns }) => columns.join(' '))),
    effect: textColumn(effects),
  };
  return makeTable(
    findingsSchema.map(({ name, kind, unit }): [string, Column] => {
      if (own[name]) return [name, own[name]];
      const column = readings.columns.get(name);
      if (column) return [name, takeRows(column, rows)];
      if (kind === 'text') return [name, textColumn(findings.map(() => ''))];
      const values = new Float64Array(rows.length).fill(Number.NaN);
      return [name, kind === 'date' ? { kind, values } : numberColumn(unit, values)];
    }),
  );
}

function countsTable(findings: readonly Finding[]): Table {
  const names = Object.keys(CHECKS) as CheckName[];
  const counts = new Map<string, number>();
  for (const { check } of findings) counts.set(check, (counts.get(check) ?? 0) + 1);
  return makeTable([
    ['check', textColumn(names)],
    ['severity', textColumn(names.map((name) => CHECKS[name].severity))],
    ['title', textColumn(names.map((name) => CHECKS[name].title))],
    [
      'findings',
      numberColumn(
        checkCountsSchema[3].unit,
        Float64Array.from(names, (name) => counts.get(name) ?? 0),
      ),
    ],
  ]);
}

function remarksOf(readings: Table, findings: readonly Finding[], applied: Applied, suspects: 'in' | 'out'): Remark[] {
  const [unit, taken, co] = [textsOf(readings, 'unit'), numbersOf(readings, 'taken_at'), numbersOf(readings, 'co_ppm')];
  const dangers = applied.keptForCo.map((row): Remark => {
    const { sentence = '' } =
      findings.find((finding) => finding.row === row && CHECKS[finding.check].severity === 'suspect') ?? {};
    return {
      severity: 'danger',
      text: say.highCoKept(textAt(unit, row), writeDay(taken[row]), shown(co[row], 0), sentence.replace(/\.$/, '')),
    };
  });
  if (applied.suspectRows === 0) return dangers;
  const text =
    suspects === 'in' ? say.suspectsIn(applied.suspectRows) : say.suspectsOut(applied.suspectRows - dangers.length);
  return [...dangers, { severity: 'warning', text }];
}
