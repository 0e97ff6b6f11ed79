import type { Description, Remark } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import * as words from '../../shared/messages/unknown-words.ts';
import { profileText } from '../../shared/readings/answer-profile.ts';
import { FILE_COLUMNS } from '../../shared/readings/columns-table.ts';
import {
  accountSchema,
  duplicatesSchema,
  proposalsSchema,
  readingsSchema,
  setAsideSchema,
  toldEventsSchema,
} from '../../shared/schemas/readings.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import type { ReadingsResult } from './compute.ts';

export function describe(result: ReadingsResult): Description {
  const { tables, files } = result;
  return {
    answer: say.readingsAnswer(
      tables['accepted'].rows,
      files.length,
      tables['set-aside'].rows,
      tables['duplicates'].rows,
    ),
    tables: [
      { table: 'accepted', title: 'Readings', columns: shownColumns(readingsSchema) },
      { table: 'set-aside', title: 'Set aside', columns: shownColumns(setAsideSchema) },
      { table: 'duplicates', title: 'Duplicates', columns: shownColumns(duplicatesSchema) },
      { table: 'proposals', title: 'Proposed', columns: shownColumns(proposalsSchema) },
      { table: 'told-events', title: 'Events in notes', columns: shownColumns(toldEventsSchema) },
      FILE_COLUMNS,
      { table: 'account', title: 'Account', columns: shownColumns(accountSchema) },
    ],
    figures: [],
    remarks: [...dangers(result), ...warnings(result), ...notes(result)],
  };
}

/** A sentence; with `byCommand` where a command has an option for what it asks. */
type Told = string | Omit<Remark, 'severity'>;

const remarksOf = (severity: Remark['severity'], told: readonly Told[]): Remark[] =>
  told.map((one) => ({ severity, ...(typeof one === 'string' ? { text: one } : one) }));

function dangers({ found }: ReadingsResult): Remark[] {
  const aside = found.highCo.map((row) => say.setAsideHighCo(row.file, row.line, row.found, row.reason));
  const unknown = found.maybeCo.map(({ file, head, rows, found: co, line }) => ({
    text: say.maybeCoColumn(file, head, rows, co, line),
    byCommand: say.profileByCommand(profileText('readings', { columns: { [head]: { field: 'co_ppm' } } })),
  }));
  const inLogs = found.logs.highCo.map(({ file, logs, line, found: co }) => say.highCoInLogs(file, logs, line, co));
  return remarksOf('danger', [...aside, ...unknown, ...inLogs]);
}

function warnings({ tables, found }: ReadingsResult): Remark[] {
  const texts: Told[] = [];
  const aside = tables['set-aside'];
  if (aside.rows > 0)
    texts.push(
      say.setAsideRemark(
        aside.rows,
        textAt(textsOf(aside, 'source_file'), 0),
        numbersOf(aside, 'source_line')[0],
        textAt(textsOf(aside, 'reason'), 0),
      ),
    );
  if (found.revised.length > 0) {
    const { file, line, ofFile, ofLine } = found.revised[0];
    texts.push(say.revisedRemark(found.revised.length, file, line, ofFile, ofLine));
  }
  for (const { found: unit, nearest, readings } of found.strangers.filter(({ nearest }) => nearest !== '').slice(0, 10))
    texts.push({ text: say.nearMissRemark(unit, nearest, readings), byCommand: say.acceptUnitByCommand(unit) });
  for (const { file, line, times, columns } of found.otherHeads)
    texts.push(say.otherHeadRemark(file, line, times, columns));
  for (const { file, head, of } of found.rivals) texts.push(say.rivalRemark(file, head, of));
  for (const { file, decimal, example, rows, line } of found.otherMarks)
    texts.push({
      text: words.otherMarksRemark(file, rows, line, example, decimal === '.'),
      byCommand: say.profileByCommand(profileText('readings', { file, decimal: 'each' })),
    });
  for (const { file, head, field, word, rows, line } of found.unknownWords) {
    const means = { words: { [field]: { [word]: field === 'fire' ? 'high' : 'as_left' } } };
    texts.push({
      text: words.unknownWordRemark(file, head, word, rows, line),
      byCommand: say.profileByCommand(profileText('readings', means)),
    });
  }
  for (const { file, head, field } of found.strangeWords)
    texts.push({ text: say.strangeWordsRemark(file, head, field), byCommand: say.unreadColumnsByCommand() });
  for (const { file, heads } of found.unreadColumns)
    texts.push({ text: say.unreadColumnsRemark(file, heads), byCommand: say.unreadColumnsByCommand() });
  const strangers = found.strangers.filter(({ nearest }) => nearest === '').map(({ found: unit }) => unit);
  if (strangers.length > 0)
    texts.push(
      say.strangerRemark(strangers.length, `${strangers.slice(0, 5).join(', ')}${strangers.length > 5 ? ' ...' : ''}`),
    );
  if (found.alike.length > 0) texts.push(say.alikeRemark(found.alike.length, found.alike[0]));
  texts.push(...proposed(found));
  for (const { field, cells, least } of found.overRange) texts.push(say.overRangeRemark(cells, field, least));
  if (found.coDashes.length > 0)
    texts.push(say.coDashesRemark(found.coDashes.length, found.coDashes[0].file, found.coDashes[0].line));
  return remarksOf('warning', texts);
}

/** One sentence a kind of proposal, with the unit that has most to gain from it. */
function proposed({ namings }: ReadingsResult['found']): Told[] {
  return namings
    .filter(({ accepted }) => !accepted)
    .map(({ kind, readings, units, unit, evidence }) => ({
      text: say.proposalRemark(kind, readings, units, unit, evidence),
      byCommand: say.acceptByCommand(kind, unit),
    }));
}

function notes({ tables, found }: ReadingsResult): Remark[] {
  const texts: Told[] = [];
  const copies = tables['duplicates'];
  if (copies.rows > 0)
    texts.push(
      say.duplicatesRemark(
        copies.rows,
        textAt(textsOf(copies, 'source_file'), 0),
        numbersOf(copies, 'source_line')[0],
        textAt(textsOf(copies, 'of_file'), 0),
        numbersOf(copies, 'of_line')[0],
      ),
    );
  if (found.matched.length > 0)
    texts.push(say.matchedRemark(found.matched.length, found.matched[0].found, found.matched[0].registered));
  if (found.datesByAnswer.length > 1) texts.push(say.datesByAnswerRemark(found.datesByAnswer));
  if (found.unknownStates > 0)
    texts.push({ text: say.unknownStateRemark(found.unknownStates), byCommand: say.singleByCommand() });
  if (found.namedStates > 0) texts.push(say.namedStatesRemark(found.namedStates, 'as you said'));
  if (found.co2Named > 0) texts.push(say.co2OriginRemark(found.co2Named));
  for (const { kind, accepted, readings, units } of found.namings)
    if (accepted) texts.push(say.acceptedRemark(kind, readings, units));
  if (found.merged.length > 0)
    texts.push(say.mergedRemark(found.merged.length, found.merged[0].found, found.merged[0].registered));
  if (found.toldEvents.length > 0) {
    const [{ unit, on, note }] = found.toldEvents;
    texts.push(say.toldRemark(found.toldEvents.length, unit, on, note));
  }
  if (found.logs.readings > 0) texts.push(say.logRemark(found.logs.readings, found.logs.lines));
  for (const { head, count, example } of found.unread) texts.push(say.unreadFlagRemark(count, head, example));
  return remarksOf('note', texts);
}
