/** One cell of a file that a reading was taken from. */
export interface OriginCell {
  /** Column of the readings: 'o2_pct'. */
  readonly field: string;
  /** Head of its column as it stands in the file; the name before the value in a printout. */
  readonly head: string;
  /** Which column of the file, the first is 1; NaN in a printout of one name and value a line. */
  readonly position: number;
  /** As written. */
  readonly text: string;
}

/** What a reading looks like in the file it came from. */
export interface ReadingOrigin {
  readonly file: string;
  readonly line: number;
  /** The line as it stands in the file, or the lines of a printout; '' where the file cannot be read again. */
  readonly text: string;
  readonly cells: readonly OriginCell[];
  /** Fire and state where the heads of those columns name them. */
  readonly byHeads: readonly { readonly field: string; readonly head: string }[];
}
