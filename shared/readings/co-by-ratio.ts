import { reasonByRatio } from '../messages/import.ts';
import type { TableFound } from './find-table.ts';
import type { ColumnMapping } from './mapping.ts';
import { plainWords } from './plain-words.ts';

/** Heads of a column of the quotient of CO and CO2 by volume; common practice of these languages, no source. */
const RATIO =
  /^(?:(?:ratio|indice|rapport|relacion|rapporto|verhaltnis|verhouding) )?co co2(?: (?:ratio|index|verhaltnis|verhouding|ratio measured))?$/;
/** O2 of dry air for air-free CO, %: regulatory practice. */
const AIR_O2_PCT = 20.9;
const HIGHEST_O2_PCT = 15;
/** Fewer rows that tell could be chance. */
const LEAST_ROWS = 2;

/**
 * What a plain CO is by the file's own quotient of CO and CO2, which is of raw values: the same as the columns give if CO
 * is raw, less if it is air-free. Settled only where every row that can tell says the same.
 */
export function coByRatio(columns: readonly ColumnMapping[], { rows }: Pick<TableFound, 'rows'>): ColumnMapping[] {
  const ratio = columns.find(({ field, head }) => field === '' && RATIO.test(plainWords(head)));
  const [co, co2, o2] = ['co', 'co2_pct', 'o2_pct'].map((name) => columns.filter(({ field }) => field === name));
  if (!ratio || co.length !== 1 || co2.length !== 1 || o2.length !== 1) return [...columns];
  const told = rows.flatMap((row) => basisOf([ratio, co[0], co2[0], o2[0]].map(({ index }) => row[index] ?? '')));
  const [basis] = told;
  if (told.length < LEAST_ROWS || basis === '' || told.some((other) => other !== basis)) return [...columns];
  const field = basis === 'raw' ? 'co_ppm' : 'co_air_free_ppm';
  return columns.map((column) =>
    column === co[0] ? { ...column, field, reason: reasonByRatio(ratio.head.trim(), basis) } : column,
  );
}

/** Nothing where the row cannot tell; '' where it fits neither. */
function basisOf(cells: readonly string[]): ('raw' | 'air-free' | '')[] {
  const [ratio, co, co2, o2] = cells.map((cell) => Number(cell.trim().replace(',', '.')));
  if (!(ratio > 0 && co > 0 && co2 > 0 && o2 > 0 && o2 < HIGHEST_O2_PCT)) return [];
  const digits = /[.,](\d+)$/.exec(cells[0].trim())?.[1].length ?? 0;
  // Half of the last printed digit of each number.
  const reach = 0.5 / Number(`1e${digits}`) + ratio * (0.5 / co + 0.05 / co2);
  const asRaw = co / 10_000 / co2;
  const asAirFree = (asRaw * (AIR_O2_PCT - o2)) / AIR_O2_PCT;
  const [isRaw, isAirFree] = [asRaw, asAirFree].map((value) => Math.abs(value - ratio) <= reach);
  if (isRaw && isAirFree) return [];
  return [isRaw ? 'raw' : isAirFree ? 'air-free' : ''];
}
