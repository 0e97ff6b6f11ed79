import { checkCountsSchema, findingsSchema, repairsSchema, touchedSchema } from '../../shared/schemas/findings.ts';
import { numberColumn, numbersOf, takeRows, textColumn } from '../../shared/table/columns.ts';
import type { Schema } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import type { Applied } from './apply-findings.ts';
import { CHECKS, type CheckName } from './checks.ts';
import type { Finding } from './finding.ts';
import { lineList } from './line-list.ts';

type Own = Readonly<Record<string, Column>>;

/** The list as people read it: a line a finding. */
export function findingsTable(readings: Table, findings: readonly Finding[], applied: Applied): Table {
  const lines = numbersOf(readings, 'source_line');
  return laidOut(findingsSchema, readings, firstRows(findings), {
    severity: textColumn(findings.map(({ check }) => CHECKS[check].severity)),
    check: textColumn(findings.map(({ check }) => check)),
    readings: counted(findings.map(({ rows }) => rows.length)),
    finding: textColumn(findings.map(({ sentence }) => sentence)),
    action: textColumn(findings.map(({ check }) => CHECKS[check].action)),
    repair: textColumn(findings.map(({ repair }) => repair?.words ?? '')),
    columns: textColumn(findings.map(({ columns }) => columns.join(' '))),
    effect: textColumn(findings.map((finding) => effectOf(finding, applied))),
    source_lines: textColumn(findings.map(({ rows }) => lineList(rows.map((row) => lines[row])))),
  });
}

/** Every reading that a finding touches, with the finding's place in the list, from 1. */
export function touchedTable(readings: Table, findings: readonly Finding[], applied: Applied): Table {
  const all = findings.flatMap((finding, i) => finding.rows.map((row) => ({ finding, row, place: i + 1 })));
  return laidOut(
    touchedSchema,
    readings,
    Int32Array.from(all, ({ row }) => row),
    {
      finding: counted(all.map(({ place }) => place)),
      check: textColumn(all.map(({ finding }) => finding.check)),
      effect: textColumn(all.map(({ finding, row }) => applied.effect(finding, row))),
    },
  );
}

export function repairsTable(readings: Table, findings: readonly Finding[]): Table {
  const repaired = findings.filter(({ repair }) => repair !== undefined);
  return laidOut(repairsSchema, readings, firstRows(repaired), {
    check: textColumn(repaired.map(({ check }) => check)),
    finding: textColumn(repaired.map(({ sentence }) => sentence)),
    repair: textColumn(repaired.map(({ repair }) => repair?.words ?? '')),
    corrections: textColumn(repaired.map(({ repair }) => JSON.stringify(repair?.corrections ?? []))),
  });
}

/** Every check, also those that found nothing. */
export function countsTable(findings: readonly Finding[]): Table {
  const names = Object.keys(CHECKS) as CheckName[];
  const counts = new Map<string, number>();
  for (const { check, rows } of findings) counts.set(check, (counts.get(check) ?? 0) + rows.length);
  return makeTable([
    ['check', textColumn(names)],
    ['severity', textColumn(names.map((name) => CHECKS[name].severity))],
    ['title', textColumn(names.map((name) => CHECKS[name].title))],
    [checkCountsSchema[3].name, counted(names.map((name) => counts.get(name) ?? 0))],
  ]);
}

const firstRows = (findings: readonly Finding[]): Int32Array => Int32Array.from(findings, ({ rows }) => rows[0]);
const counted = (values: readonly number[]): Column => numberColumn('1', Float64Array.from(values));

/** One effect where all rows share it, else the gravest with how many rows it is. */
function effectOf(finding: Finding, applied: Applied): string {
  const effects = finding.rows.map((row) => applied.effect(finding, row));
  const [first] = effects;
  if (effects.every((effect) => effect === first)) return first;
  const out = effects.filter((effect) => effect !== 'kept').length;
  return `${out} of ${effects.length} left out`;
}

/** The columns of a schema: those given, else those of the readings at the given rows. */
function laidOut(schema: Schema, readings: Table, rows: Int32Array, own: Own): Table {
  return makeTable(
    schema.map(({ name, kind, unit }): [string, Column] => {
      if (own[name]) return [name, own[name]];
      const column = readings.columns.get(name);
      if (column) return [name, takeRows(column, rows)];
      if (kind === 'text') return [name, textColumn(Array.from(rows, () => ''))];
      const values = new Float64Array(rows.length).fill(Number.NaN);
      return [name, kind === 'date' ? { kind, values } : numberColumn(unit, values)];
    }),
  );
}
