import { plainName } from './lanes.ts';

/** What the list of a file's columns says. */
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;

export const columnsOfFiles = (): string => 'Columns of the files';
export const columnsHead = (): string => 'What the columns are';
export const columnsNote = (): string =>
  'Whatever is remembered here, the next file with the same heads is read the same way.';

const FIELD_WORDS: Readonly<Record<string, string>> = {
  unit: 'unit id',
  taken_at: 'date, with or without the time',
  on: 'day',
  o2_pct: 'O2, dry',
  co2_pct: 'CO2, dry',
  co2_from: 'whether CO2 is measured',
  o2_wet_pct: 'O2, wet',
  co_ppm: 'CO, raw as the analyzer shows it',
  co_air_free_ppm: 'CO, air-free (undiluted)',
  co_ambient_ppm: 'CO in the room',
  nox_ppm: 'NOx',
  flue: 'flue temperature',
  air: 'combustion air temperature',
  water_return: 'return water temperature',
  water_supply: 'supply water temperature',
  supply_static: 'gas supply pressure, standing',
  supply_running: 'gas supply pressure, running',
  manifold: 'manifold pressure',
  statistic: 'mean, least or most of a test',
  annual_fuel: 'fuel a year',
  max_interval_months: 'months between visits at most',
  supply_min: 'least gas supply pressure of the rating plate',
  supply_max: 'most gas supply pressure of the rating plate',
  supply_drop_limit: 'limit of the gas supply drop',
};
const UNIT_ENDS = /_(?:pct|ppm|uA|m)$/;
/** A field in words, with its first letter as the trade writes it. */
export const fieldWords = (field: string): string =>
  FIELD_WORDS[field] ?? plainName(field.replace(UNIT_ENDS, '')).replace(/^o2\b|^co2\b/, (gas) => gas.toUpperCase());
export const notUsed = (): string => 'not used';
export const anyFire = (): string => 'any fire';
export const anyState = (): string => 'any state';
export const asEachCell = (): string => 'as each cell says';
export const airRatio = (): string => 'air ratio (lambda)';
export const shareOfOne = (): string => 'share of 1';

export const columnHeads = (): readonly string[] => ['Head', 'First value', 'Is', 'Sure', 'Why'];
export const fieldOf = (head: string): string => `What ${quote(head)} is`;
export const unitOf = (head: string): string => `Unit of ${quote(head)}`;
export const fireOf = (head: string): string => `Fire of ${quote(head)}`;
export const stateOf = (head: string): string => `State of ${quote(head)}`;
export const percentSure = (percent: number): string => (percent >= 99.5 ? 'sure' : `${Math.round(percent)} %`);

export const shapeName = (file: string, line: number, more: number): string =>
  `${file}${Number.isNaN(line) ? '' : `, from line ${line} on`}${more === 0 ? '' : ` and ${more} more with the same heads`}`;
/** Heads of columns that are not read, and the least sure of those that are. */
export function shapeSummary(used: number, unread: readonly string[], unsure: string, percent: number): string {
  const named = unread.slice(0, 3).map(quote).join(', ');
  const not =
    unread.length === 0
      ? ''
      : `, ${unread.length} not: ${named}${unread.length > 3 ? ` and ${unread.length - 3} more` : ''}`;
  const least = unsure === '' ? '' : `; the least sure is ${quote(unsure)} (${percentSure(percent)})`;
  return `${used} ${used === 1 ? 'column is' : 'columns are'} read${not}${least}`;
}
export const byProfile = (profile: string): string => `as remembered under ${quote(profile)}`;
export const rememberUnder = (): string => 'Name to remember it by';
export const readItSo = (): string => 'Read it so, and remember';
export const theseAreRight = (): string => 'These are right: remember them';
export const remembered = (): string => 'Remembered';
export const onlyFor = (file: string): string => `for ${file} only`;
export const forget = (): string => 'Forget';
export const saveForCommands = (): string => 'Save as a file for the commands';
export const showAllFiles = (count: number): string => `Show all ${count} files`;
