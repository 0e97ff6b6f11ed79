/**
 * A correction of imported readings: a layer over them that never overwrites. It names its rows by what they are and not by
 * where they stand, so that it finds them again when the same export comes in another order; it says why, by whom and
 * when; and it can be lifted off and laid back on.
 */
export type Correction = CorrectionMade & CorrectionDone;

export interface CorrectionMade {
  /** Follows from the content: the same correction made twice, or on two machines, is one. */
  readonly id: string;
  readonly reason: string;
  readonly initials: string;
  /** YYYY-MM-DD. */
  readonly made_on: string;
  /** Its place among the corrections of its day, from 1: of two that contradict each other the later turn counts. */
  readonly turn: number;
  /** Kept and shown, but without effect. */
  readonly lifted: boolean;
}

export type CorrectionDone =
  /** A value put right; also how the fire or the state of a row is named. */
  | { readonly action: 'change'; readonly row: RowKey; readonly column: string; readonly value: string }
  | { readonly action: 'set_aside'; readonly row: RowKey }
  /** Takes back an earlier set_aside of the same row. */
  | { readonly action: 'restore'; readonly row: RowKey }
  /** Two ids of one unit: the rows of `from` become rows of `to`. */
  | { readonly action: 'merge_units'; readonly from: string; readonly to: string }
  /** The readings of two units written down the wrong way round at one visit. */
  | { readonly action: 'swap_units'; readonly units: readonly [string, string]; readonly visited_on: string };

/** A row as it was imported, before any correction. */
export interface RowKey {
  readonly unit: string;
  /** ISO 8601, as the files of the project write it. */
  readonly taken_at: string;
  readonly fire: string;
  readonly state: string;
  /** As imported, '' where the reading names none. */
  readonly fuel: string;
  /** 1 for the first of several rows that agree in all of the above, in the order of the table. */
  readonly nth: number;
}
