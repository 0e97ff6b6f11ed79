import type { CellState, RowPage, RowRange } from '../../../shared/cell-state.ts';
import type { RowKey } from '../../../shared/corrections/correction.ts';
import type { UnitLanes } from '../../../shared/lanes/lane.ts';
import { takeRows } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import type { ShownWorking } from '../../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../../shared/working/working.ts';
import type { PageSession } from '../../../src/app/page-session.ts';
import { inventedCells } from './invented-cells.ts';
import { inventedRaised, inventedReadings } from './invented-table.ts';
import { inventedWorking } from './invented-working.ts';

export type StageState = 'done' | 'error' | 'question' | 'stale' | 'running' | 'huge' | 'empty';

/** A session without an engine behind it: it shows one state of the page and answers asks for rows. */
export class InventedSession implements PageSession {
  readonly title = 'Norrow campus';
  readonly asOf = '2026-11-15';
  readonly fault = '';
  head: PageSession['head'];
  readonly #readings: Table;
  readonly #raised = inventedRaised();
  #cells: readonly CellState[];
  #listeners = new Set<() => void>();

  constructor(state: StageState) {
    this.head = { missing: [], changed: [], revision: 0, busy: state === 'running', stopped: false };
    const rows = state === 'huge' ? 1_000_000 : 1204;
    this.#readings = inventedReadings(rows);
    this.#cells = state === 'empty' ? [] : inventedCells(rows).map((cell) => changed(cell, state));
  }

  states = (): readonly CellState[] => this.#cells;
  canUndo = (): boolean => false;
  canRedo = (): boolean => false;
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async setParameter(cell: string, parameter: string, value: unknown): Promise<void> {
    this.#cells = this.#cells.map((state) =>
      state.name !== cell
        ? state
        : {
            ...state,
            parameters: { ...(state.parameters as object), [parameter]: value },
            sentence: state.sentence.map((part) =>
              typeof part !== 'string' && part.parameter === parameter ? { ...part, text: String(value) } : part,
            ),
            version: state.version + 1,
          },
    );
    for (const listener of this.#listeners) listener();
  }

  async correct(): Promise<void> {}
  async addFiles(): Promise<void> {}
  async setAsOf(): Promise<void> {}
  async liftCorrection(): Promise<void> {}
  async acceptFiles(): Promise<void> {}
  files = (): readonly [] => [];
  merge = async (): Promise<readonly []> => [];
  compare = async (): Promise<never> => Promise.reject(new Error('there is nothing to compare on the stage'));
  compareDays = this.compare;
  readingKey = async (): Promise<RowKey> => ({
    unit: 'N-1',
    taken_at: '2024-03-01',
    fire: 'high',
    state: 'as_found',
    fuel: '',
    nth: 1,
  });
  words = async (): Promise<readonly string[]> => ['N-1', 'N-2', 'N-3'];
  working = async (place: NumberPlace): Promise<ShownWorking> => inventedWorking(place);
  close(): void {}
  async settled(): Promise<void> {}
  stop = (): Promise<void> => this.#valve(true);
  goOn = (): Promise<void> => this.#valve(false);
  async undo(): Promise<void> {}
  async redo(): Promise<void> {}
  documentText = async (): Promise<string> => '{}';
  outputFiles = async (): Promise<readonly []> => [];

  async #valve(stopped: boolean): Promise<void> {
    this.head = { ...this.head, busy: !stopped, stopped };
    for (const listener of this.#listeners) listener();
  }

  async rows(_cell: string, { table, from, to, sort }: RowRange): Promise<RowPage> {
    const whole = table === 'raised' ? this.#raised : this.#readings;
    const total = table === 'set-aside' ? 17 : whole.rows;
    const picked = Array.from({ length: Math.max(0, Math.min(to, total) - from) }, (_, i) =>
      sort?.descending ? total - 1 - from - i : from + i,
    );
    return {
      total,
      from,
      columns: new Map([...whole.columns].map(([name, column]) => [name, takeRows(column, picked)])),
    };
  }

  async lanes(_cell: string, units: readonly string[]): Promise<readonly UnitLanes[]> {
    return units.map(inventedLanes);
  }
}

function changed(cell: CellState, state: StageState): CellState {
  const late = ['derive', 'drift', 'supply', 'instruments', 'raise'].includes(cell.name);
  if (state === 'error' && cell.name === 'derive')
    return {
      ...cell,
      phase: 'failed',
      stale: true,
      message:
        'derive: the fuel "biogas" is not known; found in the register, line 12. Name a known fuel or give its composition.',
    };
  if (state === 'error' && late) return { ...cell, phase: 'waiting', stale: true, waitsFor: ['derive'] };
  if (state === 'question' && cell.name === 'readings')
    return {
      ...cell,
      phase: 'asking',
      description: undefined,
      rows: {},
      question: {
        message:
          'readings: south.csv does not settle the order of its dates; lines 2 to 40 hold 03/04/2024 and the like.',
        remedy:
          'Choose the order in which the analyzer writes dates; on the command line, --date-order answers the same.',
        parameter: 'dateOrder',
        options: [
          { value: 'dmy', label: 'Day first: 3 April 2024' },
          { value: 'mdy', label: 'Month first: 4 March 2024' },
        ],
      },
    };
  if (state === 'question' && late)
    return { ...cell, phase: 'waiting', description: undefined, rows: {}, waitsFor: ['readings'] };
  if (state === 'stale' && late)
    return {
      ...cell,
      stale: true,
      phase: cell.name === 'drift' ? 'running' : 'waiting',
      progress: 0.4,
      waitsFor: cell.name === 'drift' ? [] : ['drift'],
    };
  if (state === 'running' && late)
    return {
      ...cell,
      phase: cell.name === 'derive' ? 'running' : 'waiting',
      progress: 0.63,
      description: undefined,
      rows: {},
      waitsFor: ['derive'],
    };
  return cell;
}

function inventedLanes(unit: string): UnitLanes {
  const lane = (fire: string, middle: number): UnitLanes['lanes'][number] => ({
    fuel: 'natural_gas',
    fire,
    quantity: 'o2_pct',
    target: middle,
    lower: middle - 0.6,
    upper: middle + 0.6,
    readings: [17_500, 17_880, 18_260, 18_640, 19_020, 19_400, 19_780, 20_160].flatMap((day, i) => [
      { day, value: middle + 0.1 + (i % 3) * 0.15, asMeasured: middle + 0.3, state: 'as_found' },
      { day, value: middle - 0.2, asMeasured: middle, state: 'as_left' },
    ]),
    path: [20_160, 20_400, 20_777, 21_142].map((day, i) => ({
      day,
      level: middle - 0.2 + i * 0.28,
      lower: middle - 0.3 + i * 0.15,
      upper: middle - 0.1 + i * 0.42,
    })),
    leavesOn: 21_000,
    asOf: 20_777,
    horizon: 21_142,
  });
  return { unit, place: 'North boiler house', lanes: [lane('high', 4.1), lane('low', 5.6)] };
}
