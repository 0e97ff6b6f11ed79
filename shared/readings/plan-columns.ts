import { conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { coByRatio } from './co-by-ratio.ts';
import { columnsByWords } from './columns-by-words.ts';
import type { Field } from './fields.ts';
import type { TableFound } from './find-table.ts';
import { headKeys } from './head-keys.ts';
import { type ColumnMapping, HEAD_NOT_UNDERSTOOD } from './mapping.ts';
import { preambleUnits, type UnitTold, unitToldFor } from './preamble-units.ts';
import { type Profile, profileFits } from './profile.ts';
import { IN_CELLS } from './read-number.ts';
import { type HeadMeaning, unitInHead } from './understand-head.ts';
import { withUnitColumns } from './unit-columns.ts';
import { type Place, unused } from './unused-column.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A column whose unit or basis nothing in the file settles. */
export interface OpenColumn {
  readonly column: ColumnMapping;
  /** Others of which the same is open; one answer is for all. */
  readonly others: readonly ColumnMapping[];
  readonly what: 'unit' | 'co basis' | 'per cent or share';
}

/**
 * What each column of a found table is taken for. A profile that fits has the last word; then the heads; then units in
 * the cells; then the unit of the file's other columns of the same kind. What is still open is returned as such.
 */
export function planColumns(
  table: TableFound,
  vocabulary: Vocabulary,
  profile: Profile | undefined,
): { columns: ColumnMapping[]; open: OpenColumn[] } {
  const fitting = profile && profileFits(profile, table.heads) ? profile : undefined;
  const keys = headKeys(table.heads);
  const byHead = table.heads.map(
    (head, index) =>
      fromProfile({ head, index, key: keys[index] }, fitting, vocabulary, table.meanings[index]) ??
      fromHead({ head, index, key: keys[index] }, table.meanings[index]),
  );
  const read = vocabulary.fields.has('state') ? columnsByWords(byHead, table.rows, fitting?.words) : byHead;
  const single = withoutRivals(withUnitColumns(read, table, vocabulary).map(withoutMassCo));
  const settled = coByRatio(
    single.map((column) => settleKind(column, single)),
    table,
  );
  const units = settled.map((column) => settleUnit(column, vocabulary.fields.get(column.field), table));
  const told = preambleUnits(table.preamble);
  const named = units.map((column) => toldUnit(column, vocabulary.fields.get(column.field), told));
  const shared = named.map((column) => borrowUnit(column, vocabulary, named));
  const shares = shared.filter((column) => fitting?.columns[column.key] === undefined && isShare(column, table));
  const bases = shared.filter(({ field }) => field === 'co');
  const [first, ...others] = bases;
  return {
    columns: shared,
    open: [
      ...shares.map((column): OpenColumn => ({ column, others: [], what: 'per cent or share' })),
      ...(first ? [{ column: first, others, what: 'co basis' } as const] : []),
      ...shared
        .filter((column) => !shares.includes(column) && lacksUnit(column, vocabulary.fields.get(column.field), shared))
        .map((column): OpenColumn => ({ column, others: [], what: 'unit' })),
    ].sort((a, b) => a.column.index - b.column.index),
  };
}

function fromProfile(
  place: Place,
  profile: Profile | undefined,
  vocabulary: Vocabulary,
  meaning: HeadMeaning | undefined,
): ColumnMapping | undefined {
  const { head, key } = place;
  const named = profile?.columns[key];
  const column = named ?? profile?.columns[head] ?? profile?.columns[head.trim()];
  if (!column || !profile) return undefined;
  // What is said of one of several equal heads holds for the others, each under its own group.
  const isOther = named === undefined && key !== head.trim();
  const part = (name: 'fire' | 'state'): string =>
    isOther || column[name] === '' ? (meaning?.[name] ?? '') : column[name];
  const own = vocabulary.own.get(column.field.toLowerCase());
  const field = vocabulary.fields.get(column.field);
  return {
    ...place,
    field: own?.field ?? column.field,
    unit:
      (column.unit === 'lambda' || column.unit === IN_CELLS
        ? column.unit
        : findUnit(column.unit)?.code && column.unit !== ''
          ? findUnit(column.unit)!.code
          : (own?.unit ?? unitOf(meaning, field) ?? (field?.suffixes && unitInHead(head, field)))) ?? '',
    fire: part('fire'),
    state: part('state'),
    confidence: 1,
    reason: `profile ${profile.name}`.trim(),
  };
}

/** The unit that the head or the line below it gives, where it is one of the field. */
function unitOf(meaning: HeadMeaning | undefined, field: Field | undefined): string | undefined {
  const unit = meaning?.unit ?? '';
  return unit !== '' && field?.suffixes && (fits(unit, field.unit) || isOneOf(unit, field)) ? unit : undefined;
}

function fromHead(place: Place, meaning: HeadMeaning | undefined): ColumnMapping {
  if (!meaning) return unused(place, place.head.trim() === '' ? 'no head' : HEAD_NOT_UNDERSTOOD);
  return { ...place, ...meaning };
}

/** CO as mass in a volume or a heat is another quantity than the parts per million that analyzers count. */
function withoutMassCo(column: ColumnMapping): ColumnMapping {
  const isCo = ['co', 'co_raw', 'co_ppm', 'co_air_free_ppm', 'nox_ppm'].includes(column.field);
  if (!isCo || column.unit === '' || fits(column.unit, '[ppm]')) return column;
  return unused(column, `${findUnit(column.unit)?.shown ?? column.unit} is no share of volume; ppm is read`);
}

const SHARES = new Set(['o2_pct', 'co2_pct']);
/** O2 and CO2 of flue gas are above a quarter of a per cent, and as shares of 1 below. */
const HIGHEST_SHARE = 0.25;

/** Numbers that would all be next to nothing as per cent: a spreadsheet's own numbers under a per cent format. */
function isShare({ field, index }: ColumnMapping, { rows }: TableFound): boolean {
  if (!SHARES.has(field)) return false;
  const values = rows.map((row) => Number((row[index] ?? '').trim().replace(',', '.'))).filter((value) => value > 0);
  return values.length > 0 && values.every((value) => value < HIGHEST_SHARE);
}

/** Two columns for one thing: the surer one is used, of equals the first, and the other says so. */
function withoutRivals(columns: readonly ColumnMapping[]): ColumnMapping[] {
  const best = new Map<string, ColumnMapping>();
  const key = ({ field, fire, state }: ColumnMapping): string => `${field}|${fire}|${state}`;
  for (const column of columns) {
    const rival = best.get(key(column));
    if (column.field !== '' && (!rival || column.confidence > rival.confidence)) best.set(key(column), column);
  }
  return columns.map((column) => {
    const winner = best.get(key(column));
    if (column.field === '' || winner === column) return column;
    const rival = winner?.head ?? '';
    return { ...unused(column, `"${rival}" is already the ${column.field}`), rival };
  });
}

/** Heads that need a second look: an air ratio is excess air, a CO that says it is raw is raw, a plain one beside an air-free one too. */
function settleKind(column: ColumnMapping, columns: readonly ColumnMapping[]): ColumnMapping {
  if (column.field === 'lambda') return { ...column, field: 'excess_air_printed_pct', unit: 'lambda' };
  if (column.field === 'co_raw') return { ...column, field: 'co_ppm' };
  const isBeside = ({ field, fire, state }: ColumnMapping): boolean =>
    field === 'co_air_free_ppm' && fire === column.fire && state === column.state;
  if (column.field === 'co' && columns.some(isBeside))
    return { ...column, field: 'co_ppm', confidence: 0.85, reason: 'CO beside a column of air-free CO' };
  return column;
}

/** Units written in the cells settle what the head leaves open. */
function settleUnit(column: ColumnMapping, field: Field | undefined, { rows }: TableFound): ColumnMapping {
  if (field?.kind !== 'number') return column;
  if (column.unit !== '' && column.unit !== IN_CELLS)
    return fits(column.unit, field.unit) || isOneOf(column.unit, field)
      ? column
      : unused(column, `${column.unit} is no unit of ${field.name}`);
  if (!field.suffixes) return { ...column, unit: field.unit };
  const codes = new Set<string>();
  for (const row of rows) {
    const written = /^\D{0,3}[\d.,'’\s]*\d\+?\s*([^\d\s.,+].*)$/.exec((row[column.index] ?? '').trim())?.[1];
    const unit = written && findUnit(written);
    if (unit) codes.add(unit.code);
  }
  const [code] = codes;
  const all = rows.map((row) => (row[column.index] ?? '').trim()).filter((cell) => /\d/.test(cell));
  const bare = all.filter((cell) => /^[<>]?\s*[-+]?[\d.,]+\+?$/.test(cell)).length;
  // The unit of a few cells does not say what the many without one are in.
  if (codes.size > 0 && 2 * bare > all.length) return column;
  if (codes.size > 1 && bare === 0)
    return { ...column, unit: IN_CELLS, reason: `${column.reason}; each cell has its unit` };
  if (codes.size === 1) return { ...column, unit: code, reason: `${column.reason}; unit in the cells` };
  if (field.name === 'barometer') return { ...column, unit: barometerUnit(rows.map((row) => row[column.index] ?? '')) };
  return column;
}

/** A line above the table gives the unit of what neither head nor cells do. */
function toldUnit(column: ColumnMapping, field: Field | undefined, told: readonly UnitTold[]): ColumnMapping {
  if (!field?.suffixes || field.unit === '' || column.unit !== '') return column;
  const unit = unitToldFor(field.unit, told);
  return unit ? { ...column, unit: unit.code, reason: `${column.reason}; ${unit.reason}` } : column;
}

/** A field that keeps no unit of its own (fuel: energy, volume or mass) takes each of those it lists. */
function isOneOf(unit: string, { unit: kept, suffixes }: Field): boolean {
  return kept === '' && suffixes !== undefined && Object.values(suffixes).includes(unit);
}

function fits(unit: string, kept: string): boolean {
  const [from, to] = [findUnit(unit), findUnit(kept)];
  return (
    unit === kept || unit === 'lambda' || (from !== undefined && to !== undefined && conversion(from, to) !== undefined)
  );
}

/** Air pressures in kPa (80-110), hPa (800-1100) and in. Hg (20-35) cannot be taken for one another. */
function barometerUnit(cells: readonly string[]): string {
  const values = cells.map((cell) => Number(cell.trim().replace(',', '.'))).filter((value) => value > 0);
  const all = (from: number, to: number): boolean => values.length > 0 && values.every((v) => v >= from && v <= to);
  if (all(80, 110)) return 'kPa';
  if (all(800, 1100)) return 'hPa';
  return all(20, 35) ? "[in_i'Hg]" : '';
}

/** A file that gives one temperature in °C gives the others so too. */
function borrowUnit(column: ColumnMapping, { fields }: Vocabulary, columns: readonly ColumnMapping[]): ColumnMapping {
  const field = fields.get(column.field);
  if (!field?.suffixes || column.unit !== '' || field.unit !== 'Cel') return column;
  const others = new Set(
    columns.filter(({ unit, field: name }) => unit !== '' && fields.get(name)?.unit === 'Cel').map(({ unit }) => unit),
  );
  if (others.size !== 1) return column;
  const [unit] = others;
  return {
    ...column,
    unit,
    confidence: Math.min(column.confidence, 0.7),
    reason: `${column.reason}; unit as the other temperatures`,
  };
}

function lacksUnit(column: ColumnMapping, field: Field | undefined, columns: readonly ColumnMapping[]): boolean {
  if (!field?.suffixes || column.unit !== '') return false;
  // A column beside it gives the unit row by row.
  return !columns.some((other) => other.field === `${field.name}_unit`);
}
