import type { CellState } from '../../shared/cell-state.ts';
import { plainCount } from '../../shared/messages/page.ts';
import type { PlateFigures } from './elements/rating-plate.ts';

/** What the plate says of the data: sums over the cells that bring it in; '' while nothing is known. */
export function plateFigures(cells: readonly CellState[]): PlateFigures {
  const sum = (kind: string, table: string): string => {
    const counts = cells
      .filter((cell) => cell.kind === kind && cell.rows[table] !== undefined)
      .map(({ rows }) => rows[table]);
    return counts.length === 0 ? '' : plainCount(counts.reduce((total, count) => total + count, 0));
  };
  return {
    readings: sum('readings', 'accepted'),
    setAside: sum('readings', 'set-aside'),
    duplicates: sum('readings', 'duplicates'),
  };
}
