import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { PRESSURE_UNITS, REFERENCE_AIR_RANGE_C } from '../../shared/settings.ts';
import { CELL_NAME, NOTEBOOK_FORMAT, NOTEBOOK_VERSION, type NotebookDocument } from './document.ts';
import { isCurrency, isPressureUnit, isReferenceAir } from './document-settings.ts';
import { type FieldCheck, FieldError, fieldCheck } from './field-check.ts';
import { migrate } from './migrate.ts';

/** Deeper than any notebook; a file nested further is an attack or a fault. */
const DEEPEST = 100;

/**
 * The text of a notebook file as a document of the current version, or one sentence why it is none. It accepts what
 * notebook.schema.json accepts and what an older version wrote, and keeps every field that it does not know.
 */
export function readDocument(file: string, text: string): Outcome<NotebookDocument> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (cause) {
    return fail(say.notJson(file, cause instanceof Error ? cause.message.replaceAll(/\s+/g, ' ') : String(cause)));
  }
  try {
    return succeed(checked(file, parsed));
  } catch (cause) {
    if (cause instanceof FieldError) return fail(cause.message);
    throw cause;
  }
}

function checked(file: string, parsed: unknown): NotebookDocument {
  const check = fieldCheck(file);
  refuseForbidden(file, parsed, 'the notebook', 0);
  const head = check.object(parsed, 'the notebook');
  if (head.format !== NOTEBOOK_FORMAT)
    throw new FieldError(say.notNotebook(file, JSON.stringify(head.format) ?? 'missing'));
  const version = check.count(head.version, 'version');
  if (version > NOTEBOOK_VERSION) throw new FieldError(say.newerVersion(file, String(version), NOTEBOOK_VERSION));
  const document = check.object(migrate(head, version), 'the notebook');
  check.text(document.title, 'title', /^.{0,500}$/su, 'a text of at most 500 characters');
  const asOf = check.text(document.as_of, 'as_of', /^\d{4}-\d{2}-\d{2}$/, 'a date, YYYY-MM-DD');
  if (Number.isNaN(readIsoDate(asOf))) throw check.wrong('as_of', 'a date of the calendar', asOf);
  checkSettings(check, document.settings);
  checkData(check, file, document.data);
  checkCells(check, file, document.cells);
  return document as unknown as NotebookDocument;
}

function checkSettings(check: FieldCheck, value: unknown): void {
  const settings = check.object(value, 'settings');
  if (settings.seed !== undefined) check.count(settings.seed, 'settings.seed', 2 ** 32 - 1);
  const { reference_air_C, currency, pressure_unit } = settings;
  if (pressure_unit !== undefined && !isPressureUnit(pressure_unit))
    throw check.wrong('settings.pressure_unit', `one of ${Object.keys(PRESSURE_UNITS).join(', ')}`, pressure_unit);
  if (reference_air_C !== undefined && !isReferenceAir(reference_air_C))
    throw check.wrong(
      'settings.reference_air_C',
      `a temperature from ${REFERENCE_AIR_RANGE_C.join(' to ')} °C`,
      reference_air_C,
    );
  if (currency !== undefined && !isCurrency(currency))
    throw check.wrong('settings.currency', 'a currency code of three capitals', currency);
}

function checkData(check: FieldCheck, file: string, value: unknown): void {
  const keys = new Set<string>();
  check.list(value, 'data').forEach((item, at) => {
    const path = `data[${at}]`;
    const entry = check.object(item, path);
    const key = check.text(entry.key, `${path}.key`, /./su, 'a text');
    check.text(entry.name, `${path}.name`, /./su, 'a file name');
    check.count(entry.size, `${path}.size`);
    check.text(entry.hash, `${path}.hash`, /^([0-9a-f]{64})?$/, 'a SHA-256 in lower-case hexadecimal');
    if (entry.text !== undefined) check.text(entry.text, `${path}.text`);
    if (keys.has(key)) throw new FieldError(say.duplicateData(file, key));
    keys.add(key);
  });
}

function checkCells(check: FieldCheck, file: string, value: unknown): void {
  const names = new Set<string>();
  check.list(value, 'cells').forEach((item, at) => {
    const path = `cells[${at}]`;
    const entry = check.object(item, path);
    const name = check.text(entry.name, `${path}.name`, CELL_NAME, 'a name that begins with a letter');
    check.text(entry.kind, `${path}.kind`, /^[a-z][a-z0-9-]*$/, 'the name of a kind of cell');
    check.object(entry.parameters, `${path}.parameters`);
    if (names.has(name)) throw new FieldError(say.duplicateCell(file, name));
    names.add(name);
  });
}

function refuseForbidden(file: string, value: unknown, path: string, depth: number): void {
  if (typeof value !== 'object' || value === null) return;
  if (depth > DEEPEST) throw new FieldError(say.tooDeep(file, path.slice(0, 60), DEEPEST));
  if (Object.hasOwn(value, '__proto__')) throw new FieldError(say.forbiddenKey(file, path));
  const inside = (key: string): string =>
    Array.isArray(value) ? `${path}[${key}]` : `${path}.${key}`.replace('the notebook.', '');
  for (const [key, item] of Object.entries(value)) refuseForbidden(file, item, inside(key), depth + 1);
}
