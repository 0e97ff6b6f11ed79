import type { CellName, OutputFile } from '../../shared/cell.ts';
import { writeCsv } from '../../shared/csv/write-csv.ts';
import { PRINTED_WORKINGS } from '../../shared/messages/report.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import type { Source } from '../../shared/sources/source.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import { renderReport } from '../report/render-report.ts';
import type { ReportInput } from '../report/report-input.ts';
import type { ReportWorking } from '../report/report-working.ts';
import { documentSettings } from './document-settings.ts';
import type { Session } from './session.ts';

/** A file ready to be written: text in pieces, to be encoded as UTF-8. */
export interface WrittenText {
  readonly name: string;
  /** '' for the report, which is made of all cells. */
  readonly cell: CellName;
  /** The name that the cell gave it, which another cell may have too. */
  readonly given: string;
  pieces(): Iterable<string>;
}

/** Most units whose lanes the report draws, so that it stays under 200 pages however large the fleet. */
const DRAWN_UNITS = 120;

const bibliography = import.meta.glob<Record<string, unknown>>('../../shared/sources/*.ts', { eager: true });

/** Every file of a calculated notebook: what its cells write, then report.html. The same notebook gives the same bytes. */
export function writtenFiles(session: Session): readonly WrittenText[] {
  const taken = new Set<string>();
  const files = session.outputFiles().map((file) => {
    const name = freeName(file.name, file.cell, taken);
    taken.add(name);
    return { name, cell: file.cell, given: file.name, pieces: () => piecesOf(file) };
  });
  return [
    ...files,
    { name: 'report.html', cell: '', given: 'report.html', pieces: () => [renderReport(reportInput(session))] },
  ];
}

/** The first cell to write a name has it; a second cell of the same kind puts its own name before it. */
function freeName(name: string, cell: CellName, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const plain = cell.replaceAll(/[^\p{L}\p{N}_-]+/gu, '-');
  let free = `${plain}-${name}`;
  for (let count = 2; taken.has(free); count++) free = `${plain}-${count}-${name}`;
  return free;
}

function piecesOf(file: OutputFile): Iterable<string> {
  return 'table' in file ? writeCsv(file.table) : [`${JSON.stringify(file.json, null, 2)}\n`];
}

/** What the report is made of. */
export function reportInput(session: Session): ReportInput {
  const document = session.document();
  const { title, as_of } = document;
  const states = session.states();
  const raising = states.find(({ kind, phase }) => kind === 'raise' && phase === 'done');
  const units = raising ? raisedUnits(session, raising.name).slice(0, DRAWN_UNITS) : [];
  return {
    title,
    asOf: readIsoDate(as_of),
    settings: documentSettings(document),
    cells: states.map((state) => ({ state, tables: session.result(state.name)?.tables ?? {} })),
    lanes: raising ? session.lanes(raising.name, units) : [],
    workings: raising ? raisedWorkings(session, raising.name) : [],
    sources: sources(),
  };
}

function raisedUnits(session: Session, cell: CellName): string[] {
  const raised = session.result(cell)?.tables.raised;
  if (!raised) return [];
  const unit = textsOf(raised, 'unit');
  return [...new Set(Array.from({ length: raised.rows }, (_, row) => textAt(unit, row)))];
}

/** The figures of the gravest findings, each with the derived numbers that it rests on. */
function raisedWorkings(session: Session, cell: CellName): ReportWorking[] {
  const rows = session.result(cell)?.tables.raised?.rows ?? 0;
  const workings: ReportWorking[] = [];
  for (let row = 0; row < rows && workings.length < PRINTED_WORKINGS; row++) {
    const found = session.working({ cell, column: 'evidence', row });
    if (found.status !== 'value') continue;
    const rests = found.value.inputs.flatMap(({ from }) => {
      const rest = from && session.working(from);
      return rest?.status === 'value' ? [rest.value] : [];
    });
    workings.push({ row, working: found.value, rests });
  }
  return workings;
}

/** All entries of shared/sources, by key. */
function sources(): Readonly<Record<string, Source>> {
  const entries = Object.entries(bibliography)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, module]) => Object.values(module))
    .filter((value): value is Record<string, Source> => typeof value === 'object' && value !== null)
    .flatMap((list) => Object.entries(list))
    .filter(([, source]) => typeof source?.full === 'string');
  return Object.fromEntries(entries);
}
