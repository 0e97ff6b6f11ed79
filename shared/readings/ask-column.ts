import * as say from '../messages/import.ts';
import { type AnswerOption, ask, fail, type Outcome } from '../outcome.ts';
import { answerProfile, profileText } from './answer-profile.ts';
import type { FilePlan } from './mapping.ts';
import type { Profile } from './profile.ts';
import { DateReader } from './read-date.ts';
import type { Vocabulary } from './vocabulary.ts';

/** More columns than these are no question but a search. */
const MOST = 12;

/** The columns of a file that nobody understood, each as the answer to which of them is a field that the file must have. */
export function columnOptions(
  plan: FilePlan,
  { table, fields }: Vocabulary,
  field: string,
  profiles: readonly Profile[],
): AnswerOption[] {
  const unit = fields.get(field)?.unit ?? '';
  const used = profiles.find(({ name }) => name !== '' && name === plan.profile);
  return plan.columns
    .filter(({ field: known, index }) => known === '' && (plan.firstValues[index] ?? '') !== '')
    .map(({ key, index }) => ({ key, first: plan.firstValues[index] }))
    .filter(({ key }) => key !== '')
    .filter(({ first }) => fields.get(field)?.kind !== 'date' || !Number.isNaN(new DateReader().read(first)))
    .slice(0, MOST)
    .map(({ key, first }) => {
      const columns = { [key]: { field, unit, fire: '', state: '' } };
      return {
        value: key,
        label: say.headAndValue(key, first),
        answer: { ...answerProfile(table, plan.file, used, plan.columns, { columns }) },
      };
    });
}

/** A table is of no use without a field: which column of the file it is, where one could be it; else an error. */
export function askColumn(
  plan: FilePlan,
  vocabulary: Vocabulary,
  field: string,
  words: string,
  profiles: readonly Profile[],
): Outcome<never> {
  const known = plan.columns.filter((column) => column.field !== '');
  const heads = known.map(({ head }) => `"${head.trim()}"`).join(', ');
  const options = columnOptions(plan, vocabulary, field, profiles);
  if (options.length === 0) return fail(say.noColumn(plan.file, words, heads));
  return ask({
    message: say.whichColumn(plan.file, words, heads),
    remedy: say.answerAtCell(options.map(({ label }) => label)),
    byCommand: say.profileByCommand(
      profileText(vocabulary.table, { columns: { [options[0].value]: { field } } }),
      options.slice(1).map(({ value }) => value),
    ),
    parameter: 'profiles',
    options,
  });
}
