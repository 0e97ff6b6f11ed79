import { type Markup, markup } from '../../shared/markup/markup.ts';
import * as say from '../../shared/messages/report.ts';
import type { Table } from '../../shared/table/table.ts';
import { printTable, rowsWhere } from './sheet.ts';

const FINDING_ROWS = 60;

/** What the checks found in the readings, gravest first: one line a fault of an export, however many readings have it. */
export function checksSection(findings: Table | undefined, answer: string): Markup {
  if (!findings || findings.rows === 0) return markup``;
  const shown = rowsWhere(findings, (row) => row < FINDING_ROWS);
  return markup`<section><h2>${say.checksHead()}</h2><p>${answer}</p>
<p class="quiet">${say.checksShown(shown.length, findings.rows)}</p>
${printTable(findings, shown, [
  { column: 'severity', title: 'Severity' },
  { column: 'unit', title: 'Unit' },
  { column: 'taken_at', title: 'Taken' },
  { column: 'finding', title: 'What was found' },
  { column: 'action', title: 'What to do' },
  { column: 'repair', title: 'Proposed repair' },
  { column: 'effect', title: 'In the calculations' },
])}</section>`;
}
