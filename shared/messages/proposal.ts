/** How the import would read a file, as `check` prints it. */
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;
const MARKS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'vertical bars',
  ':': 'colons',
  '=': 'equals signs',
  columns: 'fixed columns',
  spaces: 'two or more spaces',
};

const KINDS: Readonly<Record<string, string>> = {
  readings: 'readings',
  register: 'a register of units',
  events: 'events',
  'fuel-use': 'fuel use',
};

const DECIMALS: Readonly<Record<string, string>> = {
  '.': 'decimal point',
  ',': 'decimal comma',
  each: 'each number by its own decimal mark',
};

export const tableShape = (delimiter: string, headLines: number): string =>
  `a table, fields by ${MARKS[delimiter] ?? delimiter}, ${headLines} ${headLines === 1 ? 'line' : 'lines'} above the rows`;
export const blockShape = (separator: string): string =>
  `printouts, a name and a value on each line, parted by ${MARKS[separator] ?? separator}`;
export const fileShape = (
  file: string,
  kind: string,
  shape: string,
  decimal: string,
  encoding: string,
  reason: string,
  profile: string,
): string =>
  `${file}: ${KINDS[kind] ?? kind}; ${shape}, ${DECIMALS[decimal] ?? decimal}, ${encoding} (${reason})${profile && `, profile ${quote(profile)}`}.`;
export const columnLine = (
  head: string,
  field: string,
  unit: string,
  belongsTo: string,
  confidence: number,
  reason: string,
): string =>
  `  ${quote(head.trim())} is ${field}${belongsTo && ` of ${belongsTo}`}${unit && ` in ${unit}`} (${Math.round(100 * confidence)} % sure: ${reason})`;
export const unusedColumn = (head: string, reason: string): string => `  ${quote(head.trim())} is not used (${reason})`;
export const constantLine = (field: string, value: string, reason: string): string =>
  `  every row: ${field} is ${quote(value)} (${reason})`;
export const profileLine = (json: string): string =>
  `  To answer and correct, save this as a profile and give it with --profile: ${json}`;
