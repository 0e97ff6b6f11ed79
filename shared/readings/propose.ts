import type { SourceFile } from '../cell.ts';
import * as say from '../messages/proposal.ts';
import { remedyByCommand } from '../outcome.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { findTableKind, type TableKind, type TableKindFound } from './find-table-kind.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import type { Profile } from './profile.ts';

/** How one file would be read, before any of it is. */
export interface FileProposal {
  readonly file: string;
  readonly kind: TableKind;
  /** undefined where the file is no table of readings; `fault` then says why. */
  readonly plan: FilePlan | undefined;
  readonly fault: string;
  /** What the file leaves open, with the flag that answers. */
  readonly questions: readonly string[];
  /** The plan as a profile to correct and to give with --profile. */
  readonly profile: Profile | undefined;
}

/** Looks at the beginning of each file and proposes what its columns are. Reads nothing in, decides nothing. */
export async function propose(files: readonly SourceFile[], profiles: readonly Profile[]): Promise<FileProposal[]> {
  const proposals: FileProposal[] = [];
  for (const file of files) {
    proposals.push(proposalOf(file.name, await findTableKind(file, profiles)));
  }
  return proposals;
}

function proposalOf(file: string, { kind, plan: outcome }: TableKindFound): FileProposal {
  if (outcome.status === 'error')
    return { file, kind, plan: undefined, fault: outcome.message, questions: [], profile: undefined };
  if (outcome.status === 'question')
    return {
      file,
      kind,
      plan: undefined,
      fault: outcome.question.message,
      questions: [remedyByCommand(outcome.question)],
      profile: undefined,
    };
  const { value: plan } = outcome;
  const questions = plan.questions.map((question) => `${question.message} ${remedyByCommand(question)}`);
  return { file, kind, plan, fault: '', questions, profile: asProfile(plan, kind) };
}

/** The proposal as people read it: a line about the file, a line a column, then what is open. */
export function proposalLines({ file, kind, plan, fault, questions, profile }: FileProposal): string[] {
  if (!plan) return [fault, ...questions];
  const heading = say.fileShape(
    file,
    kind,
    plan.blocks ? say.blockShape(plan.blocks.separator) : say.tableShape(plan.dialect.delimiter, plan.headRecords),
    plan.decimal,
    plan.encoding,
    plan.encodingReason,
    plan.profile,
  );
  const columns = plan.columns.map(columnLine);
  const told = plan.constants.map(({ field, value, reason }) => say.constantLine(field, value, reason));
  const open = questions.length > 0 && profile ? [...questions, say.profileLine(JSON.stringify(profile))] : [];
  return [heading, ...columns, ...told, ...open];
}

function columnLine({ head, field, unit, fire, state, confidence, reason }: ColumnMapping): string {
  if (field === '') return say.unusedColumn(head, reason);
  return say.columnLine(
    head,
    field,
    findUnit(unit)?.shown ?? unit,
    [fire, state].filter(Boolean).join(' '),
    confidence,
    reason,
  );
}

/** A profile that reads the file exactly as proposed. */
function asProfile(plan: FilePlan, table: TableKind): Profile {
  const columns = Object.fromEntries(
    plan.columns
      .filter(({ field }) => field !== '')
      .map(({ key, field, unit, fire, state }) => [key, { field, unit, fire, state }]),
  );
  const constants = Object.fromEntries(plan.constants.map(({ field, value }) => [field, value]));
  return {
    name: plan.file,
    table,
    file: '',
    columns,
    constants,
    words: plan.words,
    // What is open is not answered by the way.
    decimal: plan.questions.some(({ options }) => options.some(({ value }) => value === ',')) ? '' : plan.decimal,
    dateOrder: plan.dateOrder,
  };
}
