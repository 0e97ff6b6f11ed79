import type { BlockDialect } from '../csv/block-reader.ts';
import type { Dialect } from '../csv/dialect.ts';
import type { Encoding } from '../csv/encoding.ts';
import type { Question } from '../outcome.ts';
import type { DateOrder } from './date-order.ts';
import type { DecimalMark } from './decimal-mark.ts';

/** Reason of a column that no list of heads and no profile knows. */
export const HEAD_NOT_UNDERSTOOD = 'head not understood';

/** Reason of a column that is the fire or the state by its head, and by none of its values. */
export const wordsNotUnderstood = (field: 'fire' | 'state'): string => `none of its values is a word for the ${field}`;

/** What one column of a file is taken for, and why. */
export interface ColumnMapping {
  /** Position in the record, from 0. */
  readonly index: number;
  /** As it stands in the file. */
  readonly head: string;
  /** What a profile calls it (see headKeys). */
  readonly key: string;
  /** Name of a Field; '' where the column is not used. */
  readonly field: string;
  /** UCUM code of the unit in which the file gives it; '' for what has none. 'lambda' is an air ratio. */
  readonly unit: string;
  /** Fire point and state that the head names, for files with several readings on one line; else ''. */
  readonly fire: string;
  readonly state: string;
  /** 0 to 1; 1 for the project's own names and for profiles. */
  readonly confidence: number;
  /** One clause. */
  readonly reason: string;
  /** Head of the column that is the same thing and is read instead of this one. */
  readonly rival?: string;
}

/** A value that holds for every reading of the file: from its preamble, its profile or its user. */
export interface Constant {
  readonly field: string;
  readonly value: string;
  readonly reason: string;
}

/** How one file is read: everything that its beginning, its profile and the user's answers settle. */
export interface FilePlan {
  readonly file: string;
  readonly encoding: Encoding;
  readonly encodingReason: string;
  readonly dialect: Dialect;
  /** Records at the beginning that hold no readings: preamble, head lines. */
  readonly headRecords: number;
  /** The lines above the heads, as lettersOf has them: a page's title stands again on the next page. */
  readonly titles: readonly string[];
  /** The head line's cells, by which a repeated one is known. */
  readonly heads: readonly string[];
  /** The first value of each column that has one, as it stands in the file; '' for none at its beginning. */
  readonly firstValues: readonly string[];
  /** Fields that most rows have: some exports end every row with a delimiter that the head line does not have. */
  readonly rowFields: number;
  /** Whether rows may end before the head line does: the file leaves empty fields at the end of a row out. */
  readonly rowsMayEnd: boolean;
  readonly decimal: DecimalMark;
  readonly dateOrder: DateOrder;
  /** The order that the heads state, such as "Date (dd/mm/yyyy)"; what the dates themselves show counts more. */
  readonly dateOrderTold: DateOrder;
  readonly columns: readonly ColumnMapping[];
  readonly constants: readonly Constant[];
  /** Where the file holds one name and value on each line, one block a reading. */
  readonly blocks: BlockDialect | undefined;
  readonly profile: string;
  /** Words for fire and state that the profile adds. */
  readonly words: { readonly fire: Readonly<Record<string, string>>; readonly state: Readonly<Record<string, string>> };
  /** What the file does not settle; reading it needs the answers. */
  readonly questions: readonly Question[];
  /** Parts of the file under further head lines, in file order; found while it is read. */
  readonly sections?: readonly Section[];
}

/** A part of a file that begins with a head line of its own. */
export interface Section {
  /** Line of the head. */
  readonly line: number;
  /** Lines of heads: names, and where it has them units. */
  readonly headLines: number;
  /** undefined where the part is no table of readings. */
  readonly plan: FilePlan | undefined;
  /** What its columns were taken for even so: a high CO is looked for in them. */
  readonly columns: FilePlan;
  /** Whether it is the file's first head line again. */
  readonly own: boolean;
}
