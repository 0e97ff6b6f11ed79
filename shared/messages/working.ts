/** What is said around the working of a number. */
const digits = (value: number): string => String(Number(value.toPrecision(3)));

export const noSuchReading = (unit: string, day: string, fire: string, state: string): string =>
  `working: no reading of unit ${unit}${day && ` on ${day}`}${fire && ` at fire ${fire}`}${state && ` in state ${state}`} was accepted; see accepted.csv for those there are.`;
export const workingHead = (title: string, unit: string, day: string, fire: string, state: string): string =>
  `${title}: unit ${unit}, ${day}, ${fire}, ${state.replace('_', ' ')}`;
export const workingOrigin = (file: string, line: number): string =>
  file === '' ? 'From the notebook itself.' : `From ${file}, line ${line}.`;
export const workingInput = (title: string, symbol: string, shown: string, sd: string): string =>
  `  ${title}: ${symbol} = ${shown}${sd === '' ? '' : ` ± ${sd}`}`;
export const workingSd = (sd: number, unit: string): string =>
  Number.isFinite(sd)
    ? `Standard uncertainty ${digits(sd)}${unit === '' ? '' : ` ${unit === '°C' ? 'K' : unit}`}, of its variance:`
    : 'Its uncertainty is unknown.';
export const workingShare = (title: string, percent: number): string =>
  `  ${percent.toFixed(1).padStart(5)} %  ${title}`;
