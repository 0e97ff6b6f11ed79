import type { CellKind } from '../../shared/cell.ts';
import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { PRESSURE_UNITS, REFERENCE_AIR_RANGE_C } from '../../shared/settings.ts';
import { correctReading, liftCorrection } from './correct-reading.ts';
import { CELL_NAME, type CellEntry, type NotebookDocument } from './document.ts';
import { isCurrency, isPressureUnit, isReferenceAir } from './document-settings.ts';
import type { Edit } from './edit.ts';
import { renameReads } from './rename-reads.ts';
import { tooHeavy } from './too-heavy.ts';

type Catalogue = ReadonlyMap<string, CellKind>;

/** The edited document, or one sentence why the edit cannot be made; the given document is never altered. */
export function applyEdit(document: NotebookDocument, edit: Edit, catalogue: Catalogue): Outcome<NotebookDocument> {
  switch (edit.operation) {
    case 'set-parameter':
      return setParameter(document, edit, catalogue);
    case 'add-cell':
      return addCell(document, edit, catalogue);
    case 'remove-cell':
      return withCell(document, edit.cell, (at) => document.cells.toSpliced(at, 1));
    case 'move-cell':
      return withCell(document, edit.cell, (at) => {
        const rest = document.cells.toSpliced(at, 1);
        return rest.toSpliced(clampIndex(edit.to, rest.length), 0, document.cells[at]);
      });
    case 'rename-cell':
      return renameCell(document, edit, catalogue);
    case 'correct':
      return correctReading(document, edit.cell, edit.correction, catalogue);
    case 'lift-correction':
      return liftCorrection(document, edit.cell, edit.id, edit.lifted);
    case 'set-title':
      return succeed({ ...document, title: edit.title });
    case 'set-as-of':
      return Number.isFinite(readIsoDate(edit.asOf)) && edit.asOf.length === 10
        ? succeed({ ...document, as_of: edit.asOf })
        : fail(say.badDate(edit.asOf));
    case 'set-setting':
      return setSetting(document, edit.setting, edit.value);
    case 'add-data': {
      const keys = new Set(edit.data.map(({ key }) => key));
      return succeed({ ...document, data: [...document.data.filter(({ key }) => !keys.has(key)), ...edit.data] });
    }
    case 'remove-data':
      return succeed({ ...document, data: document.data.filter(({ key }) => key !== edit.key) });
  }
}

function setSetting(document: NotebookDocument, setting: string, value: unknown): Outcome<NotebookDocument> {
  if (setting === '__proto__') return fail(say.badSetting(setting, 'a setting', JSON.stringify(value) ?? 'nothing'));
  const wanted = value === undefined ? '' : wantedSetting(setting, value);
  if (wanted !== '') return fail(say.badSetting(setting, wanted, JSON.stringify(value) ?? 'nothing'));
  return succeed({ ...document, settings: { ...document.settings, [setting]: value } });
}

/** What the setting has to be where the value is no such thing; settings that nobody knows are kept as they are. */
function wantedSetting(setting: string, value: unknown): string {
  if (setting === 'reference_air_C' && !isReferenceAir(value))
    return `a temperature from ${REFERENCE_AIR_RANGE_C.join(' to ')} °C`;
  if (setting === 'pressure_unit' && !isPressureUnit(value)) return `one of ${Object.keys(PRESSURE_UNITS).join(', ')}`;
  if (setting === 'currency' && !isCurrency(value)) return 'a currency code of three capitals';
  const isSeed = Number.isInteger(value) && (value as number) >= 0 && (value as number) < 2 ** 32;
  return setting === 'seed' && !isSeed ? 'a whole number below 2^32' : '';
}

function clampIndex(at: number, length: number): number {
  return Number.isFinite(at) ? Math.min(Math.max(Math.trunc(at), 0), length) : length;
}

function withCell(
  document: NotebookDocument,
  name: string,
  change: (at: number) => readonly CellEntry[],
): Outcome<NotebookDocument> {
  const at = document.cells.findIndex((cell) => cell.name === name);
  return at < 0 ? fail(say.noSuchCell(name)) : succeed({ ...document, cells: change(at) });
}

function setParameter(
  document: NotebookDocument,
  { cell: name, parameter, value }: Extract<Edit, { operation: 'set-parameter' }>,
  catalogue: Catalogue,
): Outcome<NotebookDocument> {
  const cell = document.cells.find((entry) => entry.name === name);
  if (!cell) return fail(say.noSuchCell(name));
  const heavy = tooHeavy(name, value);
  if (heavy) return fail(heavy);
  const parameters = { ...cell.parameters, [parameter]: value };
  const kind = catalogue.get(cell.kind);
  if (kind) {
    const read = kind.readParameters(parameters);
    if (read.status === 'error') return read;
    if (read.status === 'value' && !Object.hasOwn(read.value as object, parameter))
      return fail(say.noSuchParameter(name, parameter));
  }
  const changed = { ...cell, parameters };
  return succeed({ ...document, cells: document.cells.map((entry) => (entry === cell ? changed : entry)) });
}

function addCell(
  document: NotebookDocument,
  { name, kind, parameters = {}, at = Number.NaN }: Extract<Edit, { operation: 'add-cell' }>,
  catalogue: Catalogue,
): Outcome<NotebookDocument> {
  if (!CELL_NAME.test(name)) return fail(say.badCellName(name));
  if (document.cells.some((cell) => cell.name === name)) return fail(say.nameTaken(name));
  const known = catalogue.get(kind);
  if (!known) return fail(say.noSuchKind(kind));
  const read = known.readParameters(parameters);
  if (read.status === 'error') return read;
  const index = clampIndex(at, document.cells.length);
  return succeed({ ...document, cells: document.cells.toSpliced(index, 0, { name, kind, parameters }) });
}

function renameCell(
  document: NotebookDocument,
  { cell, to }: Extract<Edit, { operation: 'rename-cell' }>,
  catalogue: Catalogue,
): Outcome<NotebookDocument> {
  if (!document.cells.some((entry) => entry.name === cell)) return fail(say.noSuchCell(cell));
  if (cell === to) return succeed(document);
  if (!CELL_NAME.test(to)) return fail(say.badCellName(to));
  if (document.cells.some((entry) => entry.name === to)) return fail(say.nameTaken(to));
  return succeed({
    ...document,
    cells: document.cells.map((entry) => {
      const follower = renameReads(entry, cell, to, catalogue.get(entry.kind));
      return entry.name === cell ? { ...follower, name: to } : follower;
    }),
  });
}
