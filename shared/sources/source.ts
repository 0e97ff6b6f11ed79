/** An entry of the bibliography. Every method, limit and check names one by its key. */
export interface Source {
  /** Short form for a table cell: "NASA/TP-2002-211556". */
  readonly short: string;
  /** Full reference. */
  readonly full: string;
  /**
   * How far the project has seen the source: 'seen' the text itself, 'secondary' a reprint or quotation,
   * 'memory' neither (must be checked before it is relied on), 'common practice' a fact of the trade without a source.
   */
  readonly standing: 'seen' | 'secondary' | 'memory' | 'common practice';
}
