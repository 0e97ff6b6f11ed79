import type { ShownWorking } from '../../shared/working/shown-working.ts';

/** How the figure in one raised sentence came about. */
export interface ReportWorking {
  /** Row of the raised table. */
  readonly row: number;
  readonly working: ShownWorking;
  /** Of the derived numbers that it rests on, down to the readings. */
  readonly rests: readonly ShownWorking[];
}
