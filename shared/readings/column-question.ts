import * as say from '../messages/import.ts';
import type { NamedAnswer, Question } from '../outcome.ts';
import { type ProfileAnswer, profileText } from './answer-profile.ts';
import type { TableFound } from './find-table.ts';
import type { OpenColumn } from './plan-columns.ts';
import type { Vocabulary } from './vocabulary.ts';

const CO_BASES = [
  { value: 'co_ppm', label: 'raw, as the analyzer shows it' },
  { value: 'co_air_free_ppm', label: 'air-free (undiluted)' },
];
const SHARES = [
  { value: '1', label: 'shares of 1 (0.046 is 4.6 %)' },
  { value: '%', label: 'per cent' },
];
/** Values of a column that are shown with a question about it. */
const SHOWN = 3;

/** Asks what a column holds that nothing in its file settles. */
export function columnQuestion(
  file: string,
  { column, others, what }: OpenColumn,
  table: TableFound,
  vocabulary: Vocabulary,
  answered: (answer: ProfileAnswer) => NamedAnswer,
): Question {
  const { head, field, index } = column;
  const asked = [column, ...others];
  const heads = asked.map((one) => one.head.trim());
  const values = table.rows
    .map((row) => (row[index] ?? '').trim())
    .filter((value) => value !== '')
    .slice(0, SHOWN)
    .join(', ');
  const suffixes = Object.keys(vocabulary.fields.get(field)?.suffixes ?? {});
  const question = (
    message: string,
    example: { field: string; unit?: string },
    options: readonly { value: string; label: string }[],
    of: (value: string) => { field: string; unit: string },
  ): Question => ({
    message,
    remedy: say.answerAtCell(options.map(({ label }) => label)),
    byCommand: say.profileByCommand(
      profileText(vocabulary.table, { columns: Object.fromEntries(asked.map(({ key }) => [key, example])) }),
      options.slice(1).map(({ value }) => value),
    ),
    parameter: 'profiles',
    options: options.map((option) => ({
      ...option,
      answer: answered({
        columns: Object.fromEntries(asked.map(({ key, fire, state }) => [key, { ...of(option.value), fire, state }])),
      }),
    })),
  });
  if (what === 'co basis')
    return question(say.askCoBasis(file, heads, values), { field: 'co_ppm' }, CO_BASES, (value) => ({
      field: value,
      unit: '',
    }));
  if (what === 'per cent or share')
    return question(say.askShare(file, head, values), { field, unit: '1' }, SHARES, (unit) => ({ field, unit }));
  return question(
    say.askUnit(file, head, suffixes.join(', '), values),
    { field, unit: suffixes[0] },
    suffixes.map((unit) => ({ value: unit, label: unit })),
    (unit) => ({ field, unit }),
  );
}
