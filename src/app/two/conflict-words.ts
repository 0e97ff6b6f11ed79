import type { Blank } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import type { Correction } from '../../../shared/corrections/correction.ts';
import { signedCorrection } from '../../../shared/corrections/correction-words.ts';
import * as say from '../../../shared/messages/two-notebooks.ts';
import { shownAmount } from '../../../shared/sentence/shown-amount.ts';
import type { MergeConflict } from '../protocol.ts';

/** A contradiction as people read it: what it is about, and what either notebook holds. */
export interface ConflictWords {
  readonly about: string;
  readonly here: string;
  readonly there: string;
}

/** Parameters are called and written as in the sentence of their cell. */
export function conflictWords({ place, here, there }: MergeConflict, cells: readonly CellState[]): ConflictWords {
  const blank = blankAt(place, cells);
  return { about: aboutWords(place, blank), here: valueWords(here, blank), there: valueWords(there, blank) };
}

const PARAMETER = /^cell ([^.:]+)\.parameters\.(.+)$/s;

function aboutWords(place: string, blank: Blank | undefined): string {
  const [, cell, parameter] = PARAMETER.exec(place) ?? [];
  if (cell !== undefined) return say.theParameter(cell, blank?.label ?? parameter);
  const [, corrected] = /^cell [^:]+: (.+)$/s.exec(place) ?? [];
  if (corrected !== undefined) return say.sameCorrected();
  const [, kind] = /^cell ([^.:]+)(?:\.kind)?$/s.exec(place) ?? [];
  if (kind !== undefined) return say.theKind(kind);
  const [, file] = /^data (.+)$/s.exec(place) ?? [];
  if (file !== undefined) return say.theContent(file);
  const [, setting] = /^notebook\.settings\.(.+)$/s.exec(place) ?? [];
  if (setting !== undefined) return say.theSetting(setting);
  return place === 'notebook.title' ? say.theTitle() : place === 'order of the cells' ? say.theOrder() : place;
}

function blankAt(place: string, cells: readonly CellState[]): Blank | undefined {
  const [, name, parameter] = PARAMETER.exec(place) ?? [];
  const cell = cells.find((state) => state.name === name);
  const blanks = [...(cell?.sentence ?? []), ...(cell?.details ?? [])].filter((part) => typeof part !== 'string');
  return blanks.find((blank) => blank.parameter === parameter);
}

function valueWords(value: unknown, blank: Blank | undefined): string {
  if (value === undefined || value === null || value === '') return say.unset();
  if (typeof value === 'number' && blank?.entry.kind === 'number')
    return `${shownAmount(value, blank.entry.factor)} ${blank.entry.unit}`.trim();
  if (blank?.entry.kind === 'choice') {
    const option = blank.entry.options.find((one) => one.value === String(value));
    if (option) return option.label;
  }
  if (typeof value === 'string') return value;
  if (Array.isArray(value) && value.every((item) => typeof item === 'string')) return value.join(', ');
  if (isCorrection(value)) return signedCorrection(value);
  if (isData(value)) return say.ofBytes(value.size, value.hash);
  return JSON.stringify(value);
}

const isCorrection = (value: unknown): value is Correction =>
  typeof value === 'object' && value !== null && 'action' in value && 'made_on' in value;
const isData = (value: unknown): value is { size: number; hash: string } =>
  typeof value === 'object' && value !== null && 'hash' in value && 'size' in value;
