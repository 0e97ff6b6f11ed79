import * as say from '../../shared/messages/command.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** Longer lists are for the notebook; a terminal shows about as many lines. */
const MOST_LINES = 20;

interface TextRow {
  readonly cells: readonly string[];
}

/** The raised units as lines of a table that fits the width, which is taken as 80 to 100 characters. */
export function raisedLines(raised: Table, width: number): string[] {
  if (raised.rows === 0) return [say.noneRaised()];
  const text = (name: string): ((row: number) => string) => {
    const column = textsOf(raised, name);
    return (row) => textAt(column, row).replaceAll('_', ' ');
  };
  const unit = textsOf(raised, 'unit');
  const [fire, fuel, reason, tier] = ['fire', 'fuel', 'reason', 'tier'].map(text);
  const [rank, chance, by] = ['rank', 'probability', 'by_date'].map((name) => numbersOf(raised, name));
  const fuels = new Set(Array.from({ length: raised.rows }, (_, row) => fuel(row)).filter((name) => name !== ''));
  const shown = Math.min(raised.rows, MOST_LINES);
  const rows: TextRow[] = Array.from({ length: shown }, (_, row) => ({
    cells: [
      Number.isFinite(rank[row]) ? String(rank[row]) : '',
      textAt(unit, row),
      [fire(row), fuels.size > 1 ? fuel(row) : ''].filter((part) => part !== '').join(', '),
      tier(row),
      reason(row),
      percent(chance[row]),
      writeDay(by[row]),
    ],
  }));
  const lines = layOut([{ cells: ['', 'Unit', 'Fire', 'Tier', 'Reason', 'Chance', 'By'] }, ...rows], width);
  return raised.rows > shown ? [...lines, say.moreRaised(raised.rows - shown)] : lines;
}

/** Whole per cent, never 0 or 100 for something that is neither impossible nor certain. */
function percent(share: number): string {
  if (!Number.isFinite(share)) return '';
  if (share > 0.99 && share < 1) return '>99 %';
  if (share > 0 && share < 0.01) return '<1 %';
  return `${Math.round(share * 100)} %`;
}

const RIGHT = new Set([0, 5]);

function layOut(rows: readonly TextRow[], width: number): string[] {
  const widths = rows[0].cells.map((_, column) => Math.max(...rows.map(({ cells }) => cells[column].length)));
  const over = widths.reduce((sum, w) => sum + w + 2, -2) - Math.min(Math.max(width, 80), 100);
  // Only the words of the reason and the unit's id can be long; the reason gives way first.
  if (over > 0) widths[4] = Math.max(12, widths[4] - over);
  const still = widths.reduce((sum, w) => sum + w + 2, -2) - Math.min(Math.max(width, 80), 100);
  if (still > 0) widths[1] = Math.max(8, widths[1] - still);
  return rows.map(({ cells }) =>
    cells
      .map((cell, column) => {
        const cut = cell.length > widths[column] ? `${cell.slice(0, widths[column] - 1)}…` : cell;
        return RIGHT.has(column) ? cut.padStart(widths[column]) : cut.padEnd(widths[column]);
      })
      .join('  ')
      .trimEnd(),
  );
}
