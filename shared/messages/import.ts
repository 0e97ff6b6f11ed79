import { groupedDigits } from '../quantities/grouped-digits.ts';

/** What the import says about files, columns and rows. Where, what is wrong, what was found, what to do. */
/** Names in a sentence; more are counted. */
const SHOWN_HEADS = 8;
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;
const count = (number: number, one: string, many = `${one}s`): string =>
  `${groupedDigits(String(number))} ${number === 1 ? one : many}`;

/** The name of what a title above a block of a printout says. */
export const headOfTitle = (word: string): string => `${word} in a title`;
export const byTitle = (title: string): string => `titles such as ${quote(title)}`;
export const badFiles = (cell: string): string =>
  `${cell}: "files" should be a list of data file names; give the names under which the notebook lists them.`;
export const badFuels = (cell: string): string =>
  `${cell}: "fuels" should be a list of the names of fuels that the notebook defines; give it as texts.`;
export const badAccept = (cell: string): string =>
  `${cell}: "accept" should be a list of what is accepted, such as "fires" or "fires:B-07"; give it as texts.`;
export const unknownAccept = (cell: string, found: string, known: string): string =>
  `${cell}: nothing is proposed under ${quote(found)}; accept one of ${known}, or one of a unit, such as fires:B-07.`;
export const badCell = (cell: string, parameter: string): string =>
  `${cell}: "${parameter}" should be the name of a cell, or "" for none; give one.`;
export const badChoice = (cell: string, parameter: string, found: string, allowed: string): string =>
  `${cell}: "${parameter}" is ${quote(found)}; choose one of ${allowed}, or "" to leave it open.`;
export const badProfile = (part: string, wanted: string, found: string): string =>
  `The profile cannot be read: ${part} should be ${wanted} but is ${quote(found)}; correct it and try again.`;
export const profileField = (name: string, head: string, field: string, nearest: string): string =>
  `Profile ${quote(name)}: the column ${quote(head)} is to be ${quote(field)}, which is no field of readings${nearest && ` (did you mean ${quote(nearest)}?)`}; correct it.`;

export const badEntries = (): string => 'events: entries must be a list of events; give each with unit, on and event.';
export const badEntry = (place: number, field: string, wanted: string, found: string): string =>
  `events: ${field} of entry ${place} must be ${wanted}, it is ${found}; put it right.`;
export const sameEvent = (place: number, unit: string, on: string, event: string): string =>
  `events: entry ${place} (${event} of ${unit} on ${on}) stands there twice; remove one.`;
export const noFiles = (cell: string): string => `${cell} has no data file yet; open one.`;
export const lostFile = (cell: string, key: string): string =>
  `${cell} reads the data file ${quote(key)}, which is not there; open the file again.`;
export const emptyFile = (file: string): string =>
  `${file} is empty: it holds no bytes; export it again, or leave it out.`;
export const noRows = (file: string): string =>
  `${file} has a head line but no rows below it; export it again, or leave it out.`;
export const notText = (file: string, found: string): string =>
  `${file} is not a CSV file: it holds ${found}; export the table as CSV (comma-separated text) and give that.`;
export const endlessLine = (file: string, characters: number): string =>
  `${file} is not a CSV file of readings: its first line does not end within ${count(characters, 'character')}; export the table as CSV with one row a line.`;
export const tooManyColumns = (file: string, found: number, limit: number): string =>
  `${file} has ${count(found, 'column')} on its first line, more than the ${count(limit, 'column')} that a table of readings can have; check the file, or export only the columns that are needed.`;
export const noUsableColumn = (file: string, heads: string, wanted: string): string =>
  `${file} has no usable column: its first line reads ${quote(heads)}; it needs columns for ${wanted}, so name them in a head line, or say in a profile what its columns are.`;
export const valueALine = (file: string, firstLine: string): string =>
  `${file} has one value a line, with what it is in a column of its own (${quote(firstLine)}); turn it in a spreadsheet (a pivot table) into one row a test with a column for each value, and export that.`;
export const askShare = (file: string, head: string, values: string): string =>
  `${file}: the values of the column ${quote(head)} are ${values}: as per cent they would be next to nothing, so they may be shares of 1.`;
export const atItsPlace = (text: string): string => `${text} (if it stands where the head line says)`;
export const ifCo = (text: string): string => `${text} (if that is CO)`;
export const maybeCoColumn = (file: string, head: string, rows: number, found: string, line: number): string =>
  `${file}: nobody knows what the column ${quote(head)} holds, and ${rows === 1 ? 'one of its values' : `${groupedDigits(String(rows))} of its values`} would be a dangerous CO, the first on line ${line} (${found}); if it is CO, check that unit first; then say what the column is.`;
export const transposed = (file: string, name: string): string =>
  `${file} has its names in the first column (such as ${quote(name)}) and a test in each further column; turn rows into columns in a spreadsheet and export it again, so that each test is a row.`;
export const notMean = (head: string, found: string): string =>
  `${head}: ${quote(found)} is a statistic of a test, not a reading; the mean of the test is read`;
export const noColumn = (file: string, wanted: string, heads: string): string =>
  `${file} has no column for the ${wanted}: ${heads === '' ? 'no head is understood' : `the heads understood are ${heads}`}; name the column in the head line, or say in a profile which it is.`;
export const whichColumn = (file: string, wanted: string, heads: string): string =>
  `${file} has no column that is known to be the ${wanted} (${heads === '' ? 'no head is understood' : `the heads understood are ${heads}`}): which one is it?`;
export const headAndValue = (head: string, first: string): string => `${quote(head)}, such as ${first}`;
export const changedWhileRead = (file: string): string =>
  `${file} changed while it was read; wait until whatever writes it has finished and calculate again.`;

export const askUnit = (file: string, head: string, options: string, values: string): string =>
  `${file}: the column ${quote(head)} does not say its unit (${options}?); its first values are ${values}.`;
export const askCoBasis = (file: string, heads: readonly string[], values: string): string =>
  `${file}: the ${heads.length === 1 ? 'column' : 'columns'} ${heads.map(quote).join(', ')} ${heads.length === 1 ? 'does' : 'do'} not say whether CO is raw as the analyzer shows it or air-free (undiluted); the first values are ${values}.`;
export const reasonByRatio = (head: string, basis: string): string =>
  `${quote(head)} is the quotient of ${basis} CO and CO2`;
export const askDecimal = (file: string, example: string): string =>
  `${file}: the number ${quote(example)} may have a decimal mark or a thousands mark, and no other number of the file settles it.`;
export const askTwoMarks = (file: string, most: string, other: string, others: number): string =>
  `${file}: its numbers have two decimal marks: most are written as ${quote(most)}, and ${groupedDigits(String(others))} as ${quote(other)}.`;
export const askDateOrder = (file: string, lines: string, example: string): string =>
  `${file}: its dates do not show whether the day or the month stands first: line ${lines} may be ${example}.`;
export const askYearFirst = (file: string, line: string, example: string): string =>
  `${file}: its dates with years of two digits may have the year first: line ${line} may be ${example}.`;
export const dateOr = (days: readonly string[]): string => days.join(' or ');
export const unitIdOf = (file: string): string => `Unit that ${file} was read at`;
export const unitOnlyOf = (file: string): string => `Unit of ${file}`;
export const twoDateOrders = (file: string, dayFirst: string, monthFirst: string): string =>
  `${file}: its dates contradict each other: ${dayFirst} can only have the day first, ${monthFirst} only the month; the other dates may be either.`;
/** A question about one file whose answer is that of others too. */
export const alsoIn = (message: string, others: readonly string[]): string =>
  others.length === 0
    ? message
    : `${message.replace(/\.$/, '')}; so it is in ${fewOf(others)}, which the answer is for too.`;
export const datesByAnswerRemark = (files: readonly string[]): string =>
  `${fewOf(files)}: nothing in these files shows whether the day, the month or the year stands first; all were read in the order that you named. Where one is in the other order, say its dateOrder in a profile for that file.`;
const fewOf = (names: readonly string[]): string =>
  names.length <= SHOWN_HEADS
    ? names.join(', ')
    : `${names.slice(0, SHOWN_HEADS).join(', ')} and ${names.length - SHOWN_HEADS} more`;
export const dateOnLine = (line: number, day: string): string => `line ${line} (${day})`;
export const askUnitId = (file: string): string =>
  `${file} does not say which unit its readings belong to: no column and no line of its preamble names one.`;
export const answerAtCell = (answers: readonly string[]): string => `Answer at the cell: ${answers.join(', or ')}.`;
export const nameUnitAtCell = (): string => 'Name the unit at the cell.';
export const profileByCommand = (json: string, others: readonly string[] = []): string =>
  `Say it in a profile, a JSON file such as ${json}${others.length > 0 ? ` (or in its place ${others.map((one) => `"${one}"`).join(', ')})` : ''}, and give it with --profile FILE.`;
export const dateOrderByCommand = (yearFirst: boolean): string =>
  yearFirst
    ? 'Say --date-order dmy (day first), --date-order mdy (month first) or --date-order ymd (year first).'
    : 'Say --date-order dmy (day first) or --date-order mdy (month first).';
// Reasons for setting a row aside. The file and the line stand beside them.
export const noUnitId = (): string => 'no unit: the cell that should name it is empty';
export const noDate = (): string => 'no date: the cell that should hold it is empty';
export const badDate = (head: string, found: string): string => `${head}: ${quote(found)} is no date that exists`;
export const badTime = (head: string, found: string): string => `${head}: ${quote(found)} is no time of day`;
export const badNumber = (head: string, found: string): string =>
  `${head}: ${quote(found)} is neither a number nor a mark for unknown`;
export const commaAmongPoints = (head: string, found: string): string =>
  `${head}: ${quote(found)} has a decimal comma, while the numbers of this file have a decimal point`;
export const pointAmongCommas = (head: string, found: string): string =>
  `${head}: ${quote(found)} has a decimal point, while the numbers of this file have a decimal comma`;
export const eitherMark = (head: string, found: string): string =>
  `${head}: ${quote(found)} may have a decimal mark or a thousands mark`;
export const badWord = (head: string, found: string, allowed: string): string =>
  `${head}: ${quote(found)} is none of ${allowed}`;
export const noMeasurement = (): string => 'no measurement: every measured value of the row is empty or unknown';
export const fewFields = (found: number, wanted: number): string =>
  `${count(found, 'field')} where the head line has ${wanted}: the row is cut off or a delimiter is missing`;
export const manyFields = (found: number, wanted: number): string =>
  `${count(found, 'field')} where the head line has ${wanted}: a text or a number holds the delimiter without quotes`;
export const openQuote = (): string => 'a quote is opened and not closed on this line';
export const underOtherHead = (line: number): string =>
  `it stands under another head line (line ${line}), which has no unit, no date or no measured value`;
export const otherHeadRemark = (file: string, line: number, times: number, columns: string): string =>
  columns === ''
    ? `${file}: the head line on line ${line} is not one of readings; what stands under it is set aside.`
    : `${file}: line ${line}${times > 1 ? ` (and ${count(times - 1, 'further line')})` : ''} is another head line; from there on the columns are mapped by it: ${columns}.`;
export const longLine = (): string => 'the line is longer than any row of readings can be';
export const afterAsOf = (date: string, asOf: string): string =>
  `taken at ${date}, after the day the notebook looks from (${asOf})`;
export const otherDateOrder = (head: string): string =>
  `${head}: no date that exists, with day and month in the order of the other dates of the file`;

// What the cell says about itself.
export const readingsAnswer = (accepted: number, files: number, setAside: number, duplicates: number): string =>
  `${count(accepted, 'reading')} from ${count(files, 'file')} accepted, ${groupedDigits(String(setAside))} set aside, ${count(duplicates, 'duplicate')}.`;
export const setAsideHighCo = (file: string, line: number, found: string, reason: string): string =>
  `${file}, line ${line}: a row with CO ${found} was set aside (${reason}). A high CO is a danger whatever else is wrong with its row: check that unit first.`;
export const setAsideRemark = (rows: number, file: string, line: number, reason: string): string =>
  `${count(rows, 'row was', 'rows were')} set aside, the first in ${file}, line ${line}: ${reason}.`;
export const duplicatesRemark = (rows: number, file: string, line: number, ofFile: string, ofLine: number): string =>
  `${count(rows, 'row is', 'rows are')} there twice and counted once; the first is ${file}, line ${line}, the same as ${ofFile}, line ${ofLine}.`;
export const revisedRemark = (pairs: number, file: string, line: number, ofFile: string, ofLine: number): string =>
  `${count(pairs, 'reading has', 'readings have')} the same unit, time, fire and state as another but other values; both are kept. The first is ${file}, line ${line}, beside ${ofFile}, line ${ofLine}: set aside the one that was replaced.`;
export const askRevised = (pairs: number, examples: string): string =>
  `${count(pairs, 'reading stands', 'readings stand')} in two files with other values: ${examples}.`;
export const revisedPair = (
  unit: string,
  taken: string,
  difference: string,
  ofFile: string,
  ofLine: number,
  file: string,
  line: number,
): string => `${unit} of ${taken} (${difference}) in ${ofFile}, line ${ofLine}, and ${file}, line ${line}`;
export const twoValues = (field: string, one: string, other: string): string => `${field} ${one} and ${other}`;
export const otherTexts = (): string => 'other words';
export const revisedByCommand = (): string =>
  'Say --revised keep_last (the copy in the file named last counts, the other is set aside) or --revised keep_both (two readings).';
export const replacedBy = (file: string, line: number): string =>
  `replaced by the revised copy in ${file}, line ${line}`;
export const rivalRemark = (file: string, head: string, of: string): string =>
  head === of
    ? `${file}: the head ${quote(head)} stands there twice; the first of the two columns is read, the other is not. Name them differently, or leave one out.`
    : `${file}: the columns ${quote(of)} and ${quote(head)} are the same thing by their heads; ${quote(of)} is read, ${quote(head)} is not. Say at the columns of the file which one counts, or leave one out.`;
export const unreadColumnsRemark = (file: string, heads: readonly string[]): string =>
  `${file}: ${count(heads.length, 'column is', 'columns are')} not read, since nobody knows what ${heads.length === 1 ? 'its head means' : 'their heads mean'}: ${heads.slice(0, SHOWN_HEADS).map(quote).join(', ')}${heads.length > SHOWN_HEADS ? ' ...' : ''}. Where one matters, say at the columns of the file what it is.`;
export const strangeWordsRemark = (file: string, head: string, field: string): string =>
  `${file}: the column ${quote(head)} is the ${field} by its head, but none of its values is a word for it; it is not read. Say at the columns of the file what it is; once it is called the ${field} there, what its words mean can be said beside it.`;
export const unreadColumnsByCommand = (): string => '(--profile FILE)';
export const noReadingsIn = (file: string): string =>
  `${file} holds no reading: there is a head line, but no row of values below it; export it again, or leave it out.`;
export const strangerRemark = (units: number, names: string): string =>
  `${count(units, 'unit is', 'units are')} not in the register: ${names}. ${units === 1 ? 'Its' : 'Their'} readings are kept; add ${units === 1 ? 'it' : 'them'} to the register or correct the spelling.`;
export const alikeRemark = (units: number, spellings: readonly string[]): string =>
  `${count(units, 'unit id stands', 'unit ids stand')} there in several spellings, such as ${spellings.slice(0, SHOWN_HEADS).map(quote).join(', ')}: each counts as a unit of its own, since the register has none of them. Add the unit to the register, and all its spellings are read as that.`;
export const matchedRemark = (units: number, example: string, registered: string): string =>
  `${count(units, 'spelling')} of unit ids differed from the register only in case, spaces, dashes, leading zeros, O/0 or I/1 and ${units === 1 ? 'was' : 'were'} matched, such as ${quote(example)} to ${quote(registered)}.`;
export const nearMissRemark = (found: string, registered: string, readings: number): string =>
  `${quote(found)} (${count(readings, 'reading')}) is not in the register, but ${quote(registered)} is: they were not merged. If they are one unit, accept the proposal, or correct the spelling.`;
export const overRangeRemark = (cells: number, head: string, least: string): string =>
  least === ''
    ? `${count(cells, 'cell')} of ${head} said "over range" without a number, and no reading of that analyzer shows one; ${cells === 1 ? 'it counts' : 'they count'} as unknown.`
    : `${count(cells, 'cell')} of ${head} said "over range" without a number; ${cells === 1 ? 'it counts' : 'they count'} as at least ${least}: the highest value that the analyzer showed, or for CO the least range of its sensor.`;
export const coDashesRemark = (rows: number, file: string, line: number): string =>
  `${count(rows, 'row')} with other values ${rows === 1 ? 'has' : 'have'} "----" for CO, the first in ${file}, line ${line}: it counts as unknown, but an analyzer that stops its pump because CO is high can print the same. Ask whoever took the reading.`;
export const unknownStateRemark = (rows: number): string =>
  `${count(rows, 'reading does', 'readings do')} not say whether it was as found or as left; an unknown state neither starts a run nor counts as found. Say what single readings are if you know.`;
export const namedStatesRemark = (rows: number, state: string): string =>
  `${count(rows, 'reading')} without a state ${rows === 1 ? 'was' : 'were'} named by your answer: single readings of a visit ${state}, of several the first as_found, the last as_left, those between trial.`;
export const unreadFlagRemark = (cells: number, head: string, found: string): string =>
  `${count(cells, 'cell')} of ${quote(head)} ${cells === 1 ? 'was' : 'were'} neither yes nor no (such as ${quote(found)}) and ${cells === 1 ? 'counts' : 'count'} as unknown.`;
export const steadyPart = (
  lines: number,
  every: number,
  from: number,
  to: number,
  seconds: number,
  spread: string,
): string =>
  `mean of the steadiest ${seconds} s of a log of ${count(lines, 'line')}, one every ${every === 1 ? 'second' : `${every} s`} (lines ${from} to ${to} of the file, O2 within ${spread} %)`;
export const highCoInLogs = (file: string, logs: number, line: number, found: string): string =>
  `${file}: ${count(logs, 'log has', 'logs have')} a high CO outside the steady part that is read, the first on line ${line} (${found}): where the burner was not just lighting, check that unit first.`;
export const logRemark = (readings: number, lines: number): string =>
  `${count(lines, 'line')} of logs made ${count(readings, 'reading')}, each the mean of the steadiest part; the note of each says which lines.`;
export const eventRemark = (unit: string, on: string, note: string, event: string, more: number): string =>
  `The note ${quote(note)} on ${unit} of ${on} may tell of an event (${event.replaceAll('_', ' ')})${more > 0 ? `, and so may ${count(more, 'further note')}` : ''}: accept the proposal, or add "${unit},${on},${event}" to the events table.`;
export const acceptUnitByCommand = (found: string): string => `(--accept "units:${found}")`;
export const acceptByCommand = (kind: string, unit: string): string =>
  `(--accept ${kind}; of one unit: --accept "${kind}:${unit}")`;
export const acceptEventsByCommand = (): string => '(--accept events)';
export const singleByCommand = (): string => '(--single-reading as_found or as_left)';
export const toldRemark = (notes: number, unit: string, on: string, note: string): string =>
  `${count(notes, 'note tells', 'notes tell')} of something that may be an event, such as ${quote(note)} on ${unit} of ${on}; none counts until it is accepted among the events.`;
export const acceptedEvents = (events: number): string =>
  `${count(events, 'event')} told by notes ${events === 1 ? 'counts' : 'count'}, as you accepted.`;

// What evidence proposes.
export const oneCharacter = (found: string, registered: string): string =>
  `the register has no ${quote(found)}, but ${quote(registered)}, one character away`;
export const singleStage = (): string => 'the register calls it single-stage';
export const fireSign = (title: string, high: string, low: string, unit: string): string =>
  `${title} ${high} against ${low} ${unit}`;
export const fireEvidence = (signs: readonly string[], inOrder: number): string =>
  [signs.join(', '), inOrder > 0 ? `${count(inOrder, 'reading')} by the order that the unit's other visits have` : '']
    .filter((part) => part !== '')
    .join('; ');
export const stateEvidence = (visits: number, byLine: boolean): string =>
  `the order of the tests ${byLine ? 'in the file ' : ''}at ${count(visits, 'visit')}: the first of a fire was found, the last left`;
export const fuelWindow = (fuel: string, readings: number, from: string, to: string): string =>
  `${count(readings, 'reading')} imply a CO2max of ${from === to ? from : `${from} to ${to}`} %, that of ${fuel.replaceAll('_', ' ')}`;
export const fuelEvidence = (windows: readonly string[]): string => windows.join('; ');
const NAMES: Readonly<Record<string, string>> = { fires: 'fire', states: 'state', fuels: 'fuel' };
export const proposalRemark = (kind: string, readings: number, units: number, unit: string, evidence: string): string =>
  `${count(readings, 'reading')} of ${count(units, 'unit')} ${readings === 1 ? 'names' : 'name'} no ${NAMES[kind] ?? kind}, but evidence does, such as for ${unit}: ${evidence}. It counts once you accept the proposal.`;
export const acceptedRemark = (kind: string, readings: number, units: number): string =>
  `${count(readings, 'reading')} of ${count(units, 'unit')} got ${readings === 1 ? 'its' : 'their'} ${NAMES[kind] ?? kind} from evidence, as you accepted; the table of proposals has it.`;
export const mergedRemark = (spellings: number, found: string, registered: string): string =>
  `${count(spellings, 'spelling')} near a registered unit ${spellings === 1 ? 'was' : 'were'} read as it, as you accepted, such as ${quote(found)} as ${quote(registered)}.`;
export const co2OriginRemark = (rows: number): string =>
  `${count(rows, 'reading')} did not say whether CO2 was measured; by the spread of the CO2max that each analyzer's readings imply it was found out (a calculated CO2 is no second reading).`;

// Fuels.
export const unknownFuel = (file: string, line: number, found: string, nearest: string): string =>
  `${file}, line ${line}: nobody knows the fuel ${quote(found)}${nearest && ` (did you mean ${quote(nearest)}?)`}; correct it, or define that fuel by its composition.`;

// Small tables: register, events, fuel use.
export const tableYearFirst = (file: string): string =>
  `${file}: its dates with years of two digits may have the year first.`;
export const tableDateOrder = (file: string): string =>
  `${file}: its dates do not show whether the day or the month stands first.`;
export const writeIsoDates = (): string => 'Answer at the cell, or write the dates as 2026-03-31.';
export const smallDateOrderByCommand = (yearFirst: boolean): string =>
  `Say --date-order dmy${yearFirst ? ', --date-order mdy or --date-order ymd' : ' or --date-order mdy'}, or write the dates as 2026-03-31.`;
export const noRegister = (): string => 'No register: the units are those that the readings name.';
export const withoutRegister = (): string =>
  'Without a register nothing is known of targets, burners, rating plates and fuel use: bands are default widths about what was last left, readings are not corrected for the density of the air, the gas supply has no limits of a rating plate, and savings are given in per cent only. Open a register as soon as there is one; a line a unit is enough.';
export const registerAnswer = (units: number, rows: number, limits: number, leftOut: number): string =>
  `${count(units, 'unit')} on ${count(rows, 'row')}, with ${count(limits, 'known limit')}${leftOutToo(leftOut)}.`;
export const eventsAnswer = (events: number, units: number, leftOut: number): string =>
  `${count(events, 'event')} of ${count(units, 'unit')}${leftOutToo(leftOut)}.`;
export const fuelUseAnswer = (periods: number, units: number, leftOut: number): string =>
  `${count(periods, 'metered period')} of ${count(units, 'unit')}${leftOutToo(leftOut)}.`;
const leftOutToo = (rows: number): string => (rows === 0 ? '' : `; ${count(rows, 'row')} set aside`);
export const faultRemark = (file: string, line: number, reason: string): string => `${file}, line ${line}: ${reason}.`;
export const moreFaults = (more: number): string =>
  `${count(more, 'further cell or row', 'further cells or rows')} could not be used; the table of faults lists them.`;
export const outOfBounds = (head: string, found: string, allowed: string): string =>
  `${head}: ${found} cannot be (${allowed}); it counts as unknown`;
export const crossedLimits = (lower: string, lowerValue: string, upper: string, upperValue: string): string =>
  `${lower} (${lowerValue}) lies above ${upper} (${upperValue}); both count as unknown`;
export const noUnitRow = (): string => 'the row names no unit and is set aside';
export const twoRows = (line: number): string =>
  `the same unit, fuel and valid_from as line ${line}; the first row counts, this one is set aside`;
export const unknownEvent = (found: string, nearest: string, known: string): string =>
  found === ''
    ? `no event: the cell that should name it is empty; write one of ${known}; the row is set aside`
    : `nobody knows the event ${quote(found)}${nearest && ` (did you mean ${quote(nearest)}?)`}; write one of ${known}; the row is set aside`;
export const noEventDate = (): string => 'the event has no date and is set aside';
export const badPeriod = (): string => 'a period needs a first and a last day in this order; the row is set aside';
export const noEnergy = (unit: string, fuel: string): string =>
  `${quote(unit)} of ${quote(fuel || 'an unnamed fuel')} cannot be turned into energy; the quantity counts as unknown`;
export const unitSpelling = (found: string, registered: string): string =>
  `${quote(found)} is spelled ${quote(registered)} in the register and was read as such`;
export const thinRegister = (what: string, units: number, all: number, instead: string): string =>
  `${what} is not known of ${units === all ? 'any unit' : `${units} of ${count(all, 'unit')}`}: ${instead}.`;
