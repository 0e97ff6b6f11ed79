import * as say from '../messages/correcting.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { readIsoDate } from '../quantities/dates.ts';
import { readingsSchema } from '../schemas/readings.ts';
import { correctedValue } from './corrected-value.ts';
import type { CorrectionDone, CorrectionMade, RowKey } from './correction.ts';
import { plainUnit } from './row-key-text.ts';

/** What somebody filled in on a slip, as typed. */
export interface CorrectionDraft {
  readonly doing: 'set_aside' | 'restore' | 'change' | 'fire' | 'state' | 'merge_units' | 'swap_units';
  readonly column: string;
  readonly value: string;
  readonly fire: string;
  readonly state: string;
  readonly otherUnit: string;
  readonly reason: string;
  readonly initials: string;
  readonly madeOn: string;
}

export type DraftedCorrection = CorrectionDone & Pick<CorrectionMade, 'reason' | 'initials' | 'made_on'>;

/** The correction that a slip asks for, or one sentence what is still wrong with it. `unit` is the reading's as shown. */
export function draftCorrection(draft: CorrectionDraft, row: RowKey, unit: string): Outcome<DraftedCorrection> {
  const done = doneBy(draft, row, unit);
  if (done.status !== 'value') return done;
  const [reason, initials, made_on] = [draft.reason, draft.initials, draft.madeOn].map((text) => text.trim());
  if (reason === '') return fail(say.noReason());
  if (initials === '') return fail(say.noInitials());
  if (!/^\d{4}-\d{2}-\d{2}$/.test(made_on) || Number.isNaN(readIsoDate(made_on))) return fail(say.noDay(made_on));
  return succeed({ ...done.value, reason, initials, made_on });
}

function doneBy(draft: CorrectionDraft, row: RowKey, unit: string): Outcome<CorrectionDone> {
  const { doing } = draft;
  switch (doing) {
    case 'set_aside':
    case 'restore':
      return succeed({ action: doing, row });
    case 'change':
      return change(draft.column, draft.value, row);
    case 'fire':
    case 'state':
      return draft[doing] === row[doing]
        ? fail(say.sameValue(doing))
        : succeed({ action: 'change', row, column: doing, value: draft[doing] });
    case 'merge_units':
    case 'swap_units': {
      const other = draft.otherUnit.trim();
      if (other === '') return fail(say.noUnit());
      if (other === unit || (doing === 'swap_units' && plainUnit(other) === plainUnit(unit)))
        return fail(say.sameUnit(unit));
      return succeed(
        doing === 'merge_units'
          ? { action: doing, from: unit, to: other }
          : { action: doing, units: [unit, other], visited_on: row.taken_at.slice(0, 10) },
      );
    }
  }
}

function change(column: string, typed: string, row: RowKey): Outcome<CorrectionDone> {
  const known = readingsSchema.find(({ name }) => name === column);
  const text = typed.trim();
  // People who write a decimal comma mean the same number.
  const value = known?.kind === 'number' ? text.replace(/^([<>]?\s*-?\d+),(\d+)$/, '$1.$2') : text;
  if (!correctedValue(column, value)) return fail(say.noValue(known?.title ?? column, text));
  return succeed({ action: 'change', row, column, value });
}
