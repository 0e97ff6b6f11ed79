/** 'each': every number by the mark that it has, as the user said of a file with both. */
export type DecimalMark = '.' | ',' | 'each';

/** What the cells of a file show of its decimal mark. */
export interface DecimalFound {
  /** '' where only cells like "1,234" stand in the file, which may be 1.234 or 1234. */
  readonly mark: '.' | ',' | '';
  /** A cell that decided, or that leaves it open; '' where the file holds whole numbers only. */
  readonly example: string;
  /** Cells that show the mark, and those that show the other one. */
  readonly count: number;
  readonly other: { readonly count: number; readonly example: string };
}

const SIGN = '^[<>≤≥]?=?\\s*[-+−]?';
const END = '\\s*\\+?(?:\\s*[%°\\p{L}].*)?$';
/** A mark followed by anything but exactly three digits, or after a zero alone, or after groups parted by the other mark. */
const shows = (mark: string, other: string): RegExp =>
  new RegExp(
    `${SIGN}(?:\\d*${mark}(?:\\d{1,2}|\\d{4,})|0${mark}\\d+|\\d{1,3}(?:[${other}' \\u00a0\\u202f]\\d{3})+${mark}\\d*|\\d{4,}${mark}\\d+)${END}`,
    'u',
  );
const POINT = shows('\\.', ',');
const COMMA = shows(',', '.');
const OPEN = new RegExp(`${SIGN}\\d{1,3}(?:,\\d{3}|\\.\\d{3})${END}`, 'u');
/** Two groups or more cannot be decimals: 1,234,567. */
const GROUPED = (mark: string): RegExp => new RegExp(`${SIGN}\\d{1,3}(?:${mark}\\d{3}){2,}${END}`, 'u');
const COMMA_GROUPS = GROUPED(',');
const POINT_GROUPS = GROUPED('\\.');

/** Finds the decimal mark by the cells of number columns. The majority decides; a cell of the other kind is a fault later. */
export function decimalMark(cells: Iterable<string>): DecimalFound {
  const point = { count: 0, example: '' };
  const comma = { count: 0, example: '' };
  let open = '';
  for (const cell of cells) {
    const text = cell.trim();
    if (POINT.test(text) || COMMA_GROUPS.test(text)) {
      point.count++;
      point.example ||= text;
    } else if (COMMA.test(text) || POINT_GROUPS.test(text)) {
      comma.count++;
      comma.example ||= text;
    } else if (OPEN.test(text)) open ||= text;
  }
  if (point.count > comma.count) return { mark: '.', ...point, other: comma };
  if (comma.count > 0) return { mark: ',', ...comma, other: point };
  return { mark: open === '' ? '.' : '', example: open, count: 0, other: point };
}
