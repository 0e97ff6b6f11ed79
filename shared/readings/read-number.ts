import * as say from '../messages/import.ts';
import { type Conversion, conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { DecimalMark } from './decimal-mark.ts';

/** What a cell of a number column turned out to hold. */
export const READ = { number: 0, unknown: 1, overRange: 2, wrong: 3 } as const;
export type ReadStatus = (typeof READ)[keyof typeof READ];

/** Unit of a column whose cells each carry their own; a number without one is a fault there. */
export const IN_CELLS = 'cells';

const POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);

/** Marks for "not measured". A cell that holds anything else that is no number is a fault of its row. */
const UNKNOWN = new Set(
  '- -- --- ---- ----- . .. ... _ — – / ? n/a n.a. na n.a #n/a nan null none nil unknown unbekannt inconnu desconocido sconosciuto onbekend k.a. n.b. n.v.t. n.d. nd s/d s.d. n.r. n/m nm'.split(
    ' ',
  ),
);
const DASHES = /^[-–—._\s]+$/;
const OVER_RANGE =
  /^(?:over|high|hi|too high|hoch|zu hoch|haut|trop haut|alto|troppo alto|hoog|te hoog|ofl|ol|o\.?r\.?|over[ -]?range|overflow|hi(?:gh)?[ -]?range|\*{2,}|\^{2,}|>{2,}|\+{3,}|uberlauf|überlauf|hors gamme|fuera de rango|fuori scala|buiten bereik)$/i;
const NUMBER =
  /^([<>≤≥]=?)?\s*([-+−]?)\s*([\d][\d.,'’\u0020\u00a0\u2009\u202f]*(?:e[-+]?\d+)?|[.,]\d+)\s*(\+)?\s*(.*)$/i;

/**
 * Reads cells of one number column. One reader serves one column of one file, since both the decimal mark and the unit
 * belong to these. After `read`, `status` says what the cell held and `bound` whether it was one (see NumberColumn).
 */
export class NumberReader {
  status: ReadStatus = READ.number;
  bound = 0;
  readonly #decimal: number;
  readonly #decimalMark: DecimalMark;
  /** UCUM code of the unit that the column is in; '' where it has none. */
  readonly #unit: string;
  /** From the column's unit to the one that is kept. */
  readonly #conversion: Conversion | undefined;
  /** Whether each cell has to carry its unit. */
  readonly #inCells: boolean;

  /** `unit` is the column's, `kept` the one of the results; 'lambda' is an air ratio, kept as excess air in per cent. */
  constructor(decimalMark: DecimalMark, unit = '', kept = unit) {
    this.#decimalMark = decimalMark;
    this.#decimal = decimalMark === 'each' ? NO_MARK : decimalMark.charCodeAt(0);
    this.#inCells = unit === IN_CELLS;
    this.#unit = unit === 'lambda' ? '' : this.#inCells ? kept : unit;
    this.#conversion = this.#unit === kept ? undefined : conversionOf(unit, kept);
  }

  /** The number in the unit that is kept; NaN where the cell holds none. */
  read(text: string): number {
    this.bound = 0;
    const value = this.#inCells ? Number.NaN : plainNumber(text, this.#decimal);
    if (Number.isNaN(value)) return this.#readWritten(text);
    this.status = READ.number;
    return this.#conversion === undefined ? value : value * this.#conversion.factor + this.#conversion.offset;
  }

  /**
   * Reads one column of the records [from, to) into `values` from `base` on, and marks in `seen` where a number was.
   * Cells that are neither empty nor plain digits are read by `read` and told to `other`, which finds `status` and `bound` set.
   */
  readColumn(
    records: readonly (readonly string[])[],
    index: number,
    from: number,
    to: number,
    values: Float64Array,
    base: number,
    seen: Uint8Array,
    other: (i: number, text: string) => void,
  ): void {
    const decimal = this.#decimal;
    const inCells = this.#inCells;
    const { factor, offset } = this.#conversion ?? UNCHANGED;
    for (let i = from; i < to; i++) {
      const text = records[i][index];
      if (text.length === 0) {
        values[base + i] = Number.NaN;
        continue;
      }
      const value = inCells ? Number.NaN : plainNumber(text, decimal);
      if (!Number.isNaN(value)) {
        values[base + i] = value * factor + offset;
        seen[i] = 1;
      } else {
        values[base + i] = this.read(text);
        other(i, text);
      }
    }
  }

  /** Everything that is not plain digits: marks, bounds, thousands, units in the cell. */
  #readWritten(written: string): number {
    const text = withoutUnit(written.trim());
    this.status = READ.unknown;
    if (text === '' || UNKNOWN.has(text.toLowerCase()) || DASHES.test(text)) return Number.NaN;
    this.status = READ.overRange;
    if (OVER_RANGE.test(text)) return Number.NaN;
    this.status = READ.wrong;
    const match = NUMBER.exec(text);
    if (!match) return Number.NaN;
    const [, relation = '', sign, digits, plus = '', unit] = match;
    const value = writtenNumber(digits.trim(), this.#decimalMark);
    if (Number.isNaN(value) || (relation !== '' && plus !== '')) return Number.NaN;
    const converted = this.#inColumnUnit(sign === '' || sign === '+' ? value : -value, unit.trim());
    if (Number.isNaN(converted)) return Number.NaN;
    this.status = READ.number;
    this.bound = plus !== '' || /^[>≥]/.test(relation) ? 1 : relation !== '' ? -1 : 0;
    return this.#conversion === undefined ? converted : converted * this.#conversion.factor + this.#conversion.offset;
  }

  /** One clause on a cell whose status is wrong. */
  fault(head: string, text: string): string {
    const mark = this.#decimalMark;
    const isIn = (other: DecimalMark): boolean => {
      const reader = new NumberReader(other, this.#inCells ? IN_CELLS : this.#unit);
      reader.read(text);
      return reader.status === READ.number;
    };
    if (mark === 'each' && (isIn('.') || isIn(','))) return say.eitherMark(head, text);
    if (mark === '.' && isIn(',')) return say.commaAmongPoints(head, text);
    return mark === ',' && isIn('.') ? say.pointAmongCommas(head, text) : say.badNumber(head, text);
  }

  #inColumnUnit(value: number, written: string): number {
    if (written === '') return this.#inCells ? Number.NaN : value;
    const unit = findUnit(written);
    if (!unit) return Number.NaN;
    const column = findUnit(this.#unit);
    const how = column && conversion(unit, column);
    return how ? value * how.factor + how.offset : Number.NaN;
  }
}

// Groups of three; the space forms include non-breaking, thin and narrow ones.
const groups = (mark: string): RegExp =>
  new RegExp(`^\\d{1,3}(?:(?:${mark}\\d{3})+|(?:['’\\u0020\\u00a0\\u2009\\u202f]\\d{3})+)$`);
const GROUPS = { '.': groups(','), ',': groups('\\.') };

/** A number of digits, marks and groups of three; NaN where it is none, or where it may be read in two ways. */
function writtenNumber(digits: string, decimalMark: DecimalMark): number {
  const mark = decimalMark === 'each' ? markOf(digits) : decimalMark;
  if (mark === '') return Number.NaN;
  const at = digits.lastIndexOf(mark);
  const whole = at < 0 ? digits : digits.slice(0, at);
  const rest = at < 0 ? '' : digits.slice(at + 1);
  if (!/^\d*(?:e[-+]?\d+)?$/i.test(rest)) return Number.NaN;
  if (/^\d*$/.test(whole) || (at < 0 && /^\d+e[-+]?\d+$/i.test(whole))) return Number(`${whole}${rest && `.${rest}`}`);
  if (!GROUPS[mark].test(whole)) return Number.NaN;
  return Number(`${whole.replace(/\D/g, '')}${rest && `.${rest}`}`);
}

/** The decimal mark of one number by itself; '' for "1,028", which may be 1.028 or 1028. */
function markOf(digits: string): '.' | ',' | '' {
  const last = digits.lastIndexOf('.') > digits.lastIndexOf(',') ? '.' : ',';
  const other = last === '.' ? ',' : '.';
  if (digits.includes(other) || !digits.includes(last)) return last;
  if (digits.indexOf(last) !== digits.lastIndexOf(last)) return other;
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits) ? '' : last;
}

/** A character code that no text has. */
const NO_MARK = -1;
const UNCHANGED: Conversion = { factor: 1, offset: 0 };

/** A number of plain digits, a sign and one decimal mark (a character code); NaN for every other text. */
function plainNumber(text: string, decimal: number): number {
  const { length } = text;
  if (length > 16) return Number.NaN;
  const first = length > 0 && text.charCodeAt(0) === 45 ? 1 : 0;
  let mantissa = 0;
  let decimals = -1;
  for (let i = first; i < length; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      if (decimals >= 0) decimals++;
    } else if (digit + 48 === decimal && decimals < 0 && i > first) decimals = 0;
    else return Number.NaN;
  }
  if (length === first) return Number.NaN;
  // Up to 15 digits the quotient by a power of ten is the double nearest to what is written.
  const size = decimals > 0 ? mantissa / POWERS[decimals] : mantissa;
  return first === 1 ? -size : size;
}

/** "---- ppm" is as unknown as "----". */
function withoutUnit(text: string): string {
  const match = /^(\D[^\s\d]*)\s+(\D.*)$/.exec(text);
  return match && findUnit(match[2]) ? match[1] : text;
}

function conversionOf(unit: string, kept: string): Conversion | undefined {
  if (unit === 'lambda') return { factor: 100, offset: -100 };
  const [from, to] = [findUnit(unit), findUnit(kept)];
  const how = from && to && conversion(from, to);
  return how && (how.factor !== 1 || how.offset !== 0) ? how : undefined;
}
