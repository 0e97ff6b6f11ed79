import type { CellState } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import type { Settings } from '../../shared/settings.ts';
import type { Source } from '../../shared/sources/source.ts';
import type { Table } from '../../shared/table/table.ts';
import type { ReportWorking } from './report-working.ts';

/** One finished cell of the notebook, as the report reads it. */
export interface ReportCell {
  readonly state: CellState;
  /** The cell's result tables under their keys; empty where the cell has no result. */
  readonly tables: Readonly<Record<string, Table>>;
}

/** A finished notebook: everything the report prints. It has no clock; the same input gives the same bytes. */
export interface ReportInput {
  readonly title: string;
  /** The day the notebook looks from, days since 1970-01-01. */
  readonly asOf: number;
  /** Of the notebook; the usual ones where left out. */
  readonly settings?: Settings;
  /** In the notebook's order. */
  readonly cells: readonly ReportCell[];
  /** Fire lanes of the raised units, at most as many as the caller wants drawn; a unit without lanes is printed without. */
  readonly lanes: readonly UnitLanes[];
  /** How the figures of the raised sentences came about, by row; at most as many as the caller wants printed. */
  readonly workings: readonly ReportWorking[];
  /** The bibliography to print, keyed as the methods name it. */
  readonly sources: Readonly<Record<string, Source>>;
}
