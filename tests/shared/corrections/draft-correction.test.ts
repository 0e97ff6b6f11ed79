import { describe, expect, test } from 'vitest';
import { type CorrectionDraft, draftCorrection } from '../../../shared/corrections/draft-correction.ts';

const row = { unit: 'b 07', taken_at: '2025-01-10T09:40', fire: 'high', state: 'as_found', fuel: '', nth: 1 };
const filled: CorrectionDraft = {
  doing: 'set_aside',
  column: 'o2_pct',
  value: '',
  fire: 'high',
  state: 'as_found',
  otherUnit: '',
  reason: ' The probe stood in the next stack. ',
  initials: ' KL ',
  madeOn: '2025-02-01',
};
const signed = { reason: 'The probe stood in the next stack.', initials: 'KL', made_on: '2025-02-01' };
const drafted = (changes: Partial<CorrectionDraft>) => draftCorrection({ ...filled, ...changes }, row, 'B-07');

describe('a slip that is filled in', () => {
  test.each<[Partial<CorrectionDraft>, object]>([
    [{}, { action: 'set_aside', row }],
    [{ doing: 'restore' }, { action: 'restore', row }],
    [
      { doing: 'change', value: '5.1' },
      { action: 'change', row, column: 'o2_pct', value: '5.1' },
    ],
    [
      { doing: 'change', value: '5,1' },
      { action: 'change', row, column: 'o2_pct', value: '5.1' },
    ],
    [
      { doing: 'change', column: 'co_ppm', value: '>4000' },
      { action: 'change', row, column: 'co_ppm', value: '>4000' },
    ],
    [
      { doing: 'change', value: '' },
      { action: 'change', row, column: 'o2_pct', value: '' },
    ],
    [
      { doing: 'change', column: 'note', value: 'a, b' },
      { action: 'change', row, column: 'note', value: 'a, b' },
    ],
    [
      { doing: 'fire', fire: 'low' },
      { action: 'change', row, column: 'fire', value: 'low' },
    ],
    [
      { doing: 'state', state: 'as_left' },
      { action: 'change', row, column: 'state', value: 'as_left' },
    ],
    [
      { doing: 'merge_units', otherUnit: 'B-70' },
      { action: 'merge_units', from: 'B-07', to: 'B-70' },
    ],
    [
      { doing: 'swap_units', otherUnit: 'B-08' },
      { action: 'swap_units', units: ['B-07', 'B-08'], visited_on: '2025-01-10' },
    ],
  ])('%j', (changes, done) => {
    expect(drafted(changes)).toEqual({ status: 'value', value: { ...done, ...signed } });
  });
});

describe('a slip that is not', () => {
  test.each<[Partial<CorrectionDraft>, RegExp]>([
    [{ reason: ' ' }, /reason/],
    [{ initials: '' }, /initials/],
    [{ madeOn: '1.2.2025' }, /"1\.2\.2025" is no date/],
    [{ madeOn: '2025-02-30' }, /is no date/],
    [{ doing: 'change', value: 'five' }, /"five" is no value for O2/],
    [{ doing: 'change', column: 'taken_at', value: '' }, /no value for Taken/],
    [{ doing: 'change', column: 'source_line', value: '7' }, /no value for Line/],
    [{ doing: 'fire', fire: 'high' }, /that already/],
    [{ doing: 'merge_units', otherUnit: ' ' }, /other unit/],
    [{ doing: 'swap_units', otherUnit: 'b07' }, /B-07 itself/],
  ])('%j is refused in one sentence', (changes, said) => {
    expect(drafted(changes)).toMatchObject({ status: 'error', message: expect.stringMatching(said) });
  });
});
