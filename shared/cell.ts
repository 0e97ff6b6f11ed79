/**
 * THE CONTRACT: what a kind of cell is.
 *
 * A kind is a plain object of pure functions. It knows shared/ and its own folder, never another cell, never the
 * engine and never the page. Every effect (clock, files, randomness, time slices) reaches it through CellContext.
 */

import type { ShardWork } from './crew.ts';
import type { UnitLanes } from './lanes/lane.ts';
import type { Outcome } from './outcome.ts';
import type { Replays } from './replays.ts';
import type { SettingName, Settings } from './settings.ts';
import type { Table } from './table/table.ts';
import type { ReadingOrigin } from './working/reading-origin.ts';
import type { WorkedReading } from './working/worked-reading.ts';
import type { Working } from './working/working.ts';

/** The user's name for a cell, unique in its notebook. */
export type CellName = string;

/** The name under which a notebook lists a data file. */
export type SourceKey = string;

/** What every cell's result has in common: named tables that other cells read. Kinds add fields of their own. */
export interface CellResult {
  readonly tables: Readonly<Record<string, Table>>;
}

/** One cell read by another. Where `tables` is given, a change of the reader's other tables does not reach it. */
export interface Read {
  readonly cell: CellName;
  readonly tables?: readonly string[];
  /** While that cell fails, asks or waits, the reader is calculated without it: it is then absent from the inputs. */
  readonly optional?: true;
}

export type Inputs = ReadonlyMap<CellName, CellResult>;

/** A data file as the host opened it. Its bytes may be read any number of times. */
export interface SourceFile {
  readonly name: string;
  readonly size: number;
  /** SHA-256 of the bytes, lower-case hexadecimal. */
  readonly hash: string;
  open(): AsyncIterable<Uint8Array>;
}

export interface CellContext {
  /** The day the notebook looks from, as days since 1970-01-01. There is no other "today". */
  readonly asOf: number;
  readonly seed: number;
  /** Of the notebook; those that the kind does not list among its `settings` have their usual values. */
  readonly settings?: Settings;
  readonly signal: AbortSignal;
  source(key: SourceKey): SourceFile | undefined;
  /** Share done, 0..1, and optionally what is being done. */
  progress(share: number, doing?: string): void;
  /** Lets others run and throws the signal's reason when a newer change has made this calculation useless. */
  pause(): Promise<void>;
  /** Helper workers for a work of the kind's `crews`, where the host has some; see enlist in crew.ts. */
  helpers?(work: string, shards: readonly unknown[]): Promise<unknown>;
}

/** A sentence is text with blanks; each blank is one parameter. */
export type Segment = string | Blank;

export interface Blank {
  readonly parameter: string;
  /** What it is, in a few plain words ("CO limit"): read aloud, and named where an entry is refused. */
  readonly label: string;
  /** As shown in the blank. */
  readonly text: string;
  readonly entry: BlankEntry;
}

export type BlankEntry =
  | {
      readonly kind: 'number';
      /** The range of the parameter itself. */
      readonly minimum?: number;
      readonly maximum?: number;
      /** People read and type the parameter times this: 100 for a share of 0..1 in per cent. */
      readonly factor?: number;
      readonly unit: string;
      readonly optional?: boolean;
    }
  | { readonly kind: 'choice'; readonly options: readonly { readonly value: string; readonly label: string }[] }
  | {
      readonly kind: 'cell';
      readonly kinds: readonly string[];
      /** The parameter may be '', for a notebook without such a cell or a reader that is to go without it. */
      readonly optional?: boolean;
    }
  | { readonly kind: 'files' }
  | { readonly kind: 'text' };

/** How a column is shown. The table's own column holds values and unit. */
export interface ShownColumn {
  readonly column: string;
  readonly title: string;
  /** Digits after the decimal mark; significant digits are the writer's business. */
  readonly digits?: number;
  /** The unit as people read it ('%', '°C', 'Pa'), '' for none. */
  readonly unit: string;
  /** Its numbers can show their working. */
  readonly worked?: true;
}

export interface ShownTable {
  /** Key of CellResult.tables. */
  readonly table: string;
  readonly title: string;
  readonly columns: readonly ShownColumn[];
}

/** A large picture: a Vega-Lite specification whose data are finished values under generated field names. */
export interface Figure {
  readonly name: string;
  readonly title: string;
  /** One sentence that says what the picture shows, for those who cannot see it. */
  readonly alternative: string;
  readonly specification: Readonly<Record<string, unknown>>;
}

export interface Remark {
  readonly severity: 'note' | 'warning' | 'danger';
  readonly text: string;
  /** What a command adds: the option that does what the text asks for. */
  readonly byCommand?: string;
}

/** A finished cell for people: page, report and terminal draw the same description. */
export interface Description {
  /** The cell's answer: one sentence with the numbers. */
  readonly answer: string;
  readonly tables: readonly ShownTable[];
  readonly figures: readonly Figure[];
  /** Defaults used and what they touched, cautions, faults; most severe first. */
  readonly remarks: readonly Remark[];
}

/** A file that `review` and `calculate` write for this cell. */
export type OutputFile =
  | { readonly name: string; readonly table: Table }
  | { readonly name: string; readonly json: unknown };

/**
 * The part of a calculation that a change of judgement (a band, a horizon) must not repeat.
 * Its result is kept under `parameters` and the versions of what it reads.
 */
export interface FitStage<Parameters, Fitted extends CellResult> {
  parameters(parameters: Parameters): unknown;
  reads(parameters: Parameters): readonly Read[];
  compute(parameters: Parameters, inputs: Inputs, context: CellContext): Promise<Outcome<Fitted>>;
}

export interface CellKind<
  Parameters = unknown,
  Result extends CellResult = CellResult,
  Fitted extends CellResult = CellResult,
> {
  /** Kebab-case, equal to its folder's name. */
  readonly name: string;
  readonly title: string;
  /** What the kind is for, in one plain sentence. */
  readonly purpose: string;
  /** Fills every default; what it returns is complete, and survives JSON. */
  readParameters(raw: unknown): Outcome<Parameters>;
  reads(parameters: Parameters): readonly Read[];
  sources(parameters: Parameters): readonly SourceKey[];
  sentence(parameters: Parameters): readonly Segment[];
  /** The notebook's settings that its results depend on. */
  readonly settings?: readonly SettingName[];
  /** A second sentence, for what is seldom changed; it is shown more quietly. */
  details?(parameters: Parameters): readonly Segment[];
  readonly fit?: FitStage<Parameters, Fitted>;
  /** Pure but for context. `fitted` is the fit stage's result where the kind has one. */
  compute(
    parameters: Parameters,
    inputs: Inputs,
    context: CellContext,
    fitted: Fitted | undefined,
  ): Promise<Outcome<Result>>;
  /** Works that helper workers may do on shards of this kind's data, by name; see crew.ts. */
  readonly crews?: Readonly<Record<string, ShardWork>>;
  /** Cells that this one wants calculated as of past days; their results stand among its inputs under replayName. */
  replays?(parameters: Parameters, asOf: number): Replays;
  describe(result: Result): Description;
  files?(result: Result): readonly OutputFile[];
  /** How one number of a row came about, down to the readings or to the numbers of other cells, where the kind can show it. */
  working?(result: Result, column: string, row: number): Outcome<Working>;
  /** What readings look like in the files that they came from; those that this cell did not import are left out. */
  origins?(
    result: Result,
    readings: readonly WorkedReading[],
    source: (file: string) => SourceFile | undefined,
  ): Promise<ReadonlyMap<WorkedReading, ReadingOrigin>>;
  /** What this cell has put right in readings, in signed sentences; those that stay as they came are left out. */
  amended?(result: Result, readings: readonly WorkedReading[]): ReadonlyMap<WorkedReading, readonly string[]>;
  /** The fire lanes of the given units, where the result holds their history. */
  lanes?(result: Result, units: readonly string[]): readonly UnitLanes[];
}
