import * as say from '../messages/import.ts';
import type { NamedAnswer, Question } from '../outcome.ts';
import { type ProfileAnswer, profileText } from './answer-profile.ts';
import { type DecimalMark, decimalMark } from './decimal-mark.ts';
import type { TableFound } from './find-table.ts';
import type { ColumnMapping } from './mapping.ts';
import type { Profile } from './profile.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Fewer numbers with the other mark, or a smaller share of them, are slips of the pen: their rows are set aside. */
const LEAST_OF_OTHER = 2;
const LEAST_OTHER_SHARE = 0.05;

const MARKS = [
  { value: '.', label: 'decimal point' },
  { value: ',', label: 'decimal comma' },
] as const;
const EACH = { value: 'each', label: 'each number by the mark that it has' } as const;

/** Which decimal mark a file has, by its profile or its numbers; with a question where they leave it open or have both. */
export function settleDecimal(
  file: string,
  { rows, dialect }: TableFound,
  columns: readonly ColumnMapping[],
  { fields, table }: Vocabulary,
  profile: Profile | undefined,
  answered: (answer: ProfileAnswer) => NamedAnswer,
): { mark: DecimalMark; question?: Question } {
  if (profile && profile.decimal !== '') return { mark: profile.decimal };
  const numbers = columns.filter(({ field }) => fields.get(field)?.kind === 'number').map(({ index }) => index);
  const { mark, example, count, other } = decimalMark(rows.flatMap((row) => numbers.map((index) => row[index] ?? '')));
  const question = (message: string, options: readonly { value: DecimalMark; label: string }[]): Question => ({
    message,
    remedy: say.answerAtCell(options.map(({ label }) => label)),
    byCommand: say.profileByCommand(
      profileText(table, { file, decimal: options[0].value }),
      options.slice(1).map(({ value }) => value),
    ),
    parameter: 'profiles',
    options: options.map((option) => ({ ...option, answer: answered({ decimal: option.value }) })),
  });
  if (mark !== '') {
    const isSlip = other.count < LEAST_OF_OTHER || other.count < LEAST_OTHER_SHARE * (count + other.count);
    if (isSlip) return { mark };
    return { mark, question: question(say.askTwoMarks(file, example, other.example, other.count), [...MARKS, EACH]) };
  }
  // Where commas part the fields, they are not the decimal mark as well.
  if (dialect.delimiter === ',') return { mark: '.' };
  return { mark: '.', question: question(say.askDecimal(file, example), MARKS) };
}
