/** What is said in the working of a number that is held against a limit, and of one that was fitted. */
import { reasonName } from './report.ts';

export const noFormula = (reason: string): string =>
  `"${reasonName(reason)}" is a finding without a formula below it: its sentence holds all of its numbers, and the method stands with the cell.`;
export const atLeast = (shown: string): string => `at least ${shown}`;
export const coAsRead = (): string => 'CO as read';
export const coOverLimit = (): string => 'CO above the limit';
export const coLimit = (): string => 'Limit of CO that this notebook judges by';
export const coLimitHolds = (): string => 'Which limit applies is for the local code and the rating plate to say.';
export const overMaximum = (): string => 'Supply pressure above the maximum';
export const underMinimum = (): string => 'Supply pressure short of the minimum';
export const staticRead = (): string => 'Gas supply, static, as read';
export const runningRead = (): string => 'Gas supply, running, as read';
export const plateMaximum = (): string => 'Maximum in the register';
export const plateMinimum = (): string => 'Minimum in the register';
export const plateHolds = (): string => 'The rating plate has the last word.';
const readings = (count: number): string => `${count} reading${count === 1 ? '' : 's'}`;
export const dropNow = (count: number): string => `Supply drop now, fitted to ${readings(count)}`;
export const dropLimit = (): string => 'Limit of the drop';
export const dropOver = (): string => 'Supply drop above the limit';
export const dropRoom = (): string => 'What the supply drop still may grow';
export const levelNow = (gas: string, count: number): string => `${gas} now, fitted to ${readings(count)}`;
export const upperLimit = (gas: string): string => `Upper limit of ${gas}`;
export const lowerLimit = (gas: string): string => `Lower limit of ${gas}`;
export const beyondLimit = (gas: string): string => `${gas} beyond its limit`;
export const roomToLimit = (gas: string): string => `${gas} inside its nearer limit`;
export const fitHolds = (): string =>
  'A fit to all of the unit’s readings is no formula: its method stands with the cell, its last reading below.';
export const lastRead = (title: string): string => `${title}, at the last reading`;
export const fitUsage = (): string => 'fit(x)';
export const fitMeans = (): string =>
  'What the cell’s model makes of x today from all readings of the unit and what the fleet has in common; it is no formula, and its method stands with the cell';
export const fitNumbers = (last: string): string => (last === '' ? '' : `..., ${last}`);
export const notWorked = (column: string, worked: string): string =>
  `${column} has no working of its own; ${worked} have one.`;
export const noRow = (column: string): string => `${column} of this row is not known, so there is nothing to work out.`;
