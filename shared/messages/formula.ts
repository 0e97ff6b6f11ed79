/** Sentences about formulas. A problem is the end of a sentence that formulaFault begins. */
export const formulaFault = (
  name: string,
  line: number,
  column: number,
  problem: string,
  quoted: string,
  caret: string,
): string => `Formula ${name}, line ${line}, place ${column}: ${problem}\n  ${quoted}\n  ${caret}`;

export const formulaTooLong = (found: number, allowed: number): string =>
  `it has ${found} characters, and at most ${allowed} are read; split it into columns of its own.`;
export const formulaTooDeep = (allowed: number): string =>
  `it nests deeper than ${allowed} levels; split it into columns of its own.`;
export const tooManyCalls = (found: number, allowed: number): string =>
  `it has ${found} parts, and at most ${allowed} are read; split it into columns of its own.`;
export const formulaEmpty = (): string => 'there is no formula; write one, such as 100 * co_ppm / co2_pct.';
export const notUnderstood = (reason: string): string =>
  `it cannot be read (${reason}); write numbers, names, + - * / % **, comparisons, && || !, ? : and calls of listed functions.`;
export const notInLanguage = (what: string): string =>
  `${what} is no part of the formula language; use numbers, names, arithmetic, comparisons, && || !, ? : and calls of listed functions.`;
export const unknownName = (written: string, nearest: string): string =>
  nearest === ''
    ? `nothing here is called ${written}; the names are the columns of the readings and of this cell.`
    : `nothing here is called ${written}: did you mean ${nearest}?`;
export const unknownFunction = (written: string, nearest: string, known: string): string =>
  nearest === ''
    ? `there is no function ${written}; the functions are ${known}.`
    : `there is no function ${written}: did you mean ${nearest}?`;
export const readsItself = (path: string): string => `it reads itself (${path}); take one of these out of the circle.`;
export const unitsDiffer = (
  operator: string,
  left: string,
  leftUnit: string,
  right: string,
  rightUnit: string,
): string =>
  `${operator} joins ${left} in ${leftUnit} and ${right} in ${rightUnit}, which measure different things; convert or drop one of them.`;
export const pointsAdded = (operator: string, left: string, right: string): string =>
  `${operator} takes two points on a scale, ${left} and ${right}; only their difference has a meaning, or one plus a difference in K.`;
export const pointScaled = (operator: string, found: string): string =>
  `${operator} takes ${found}, a temperature counted from the freezing point, whose multiple means nothing; subtract another temperature first.`;
export const bareWithPoint = (operator: string, number: string, other: string): string =>
  `${operator} joins the bare number ${number} and the temperature ${other}; say quantity(${number}, "Cel") for a temperature or quantity(${number}, "K") for a difference.`;
export const notANumber = (operator: string, found: string, kind: string): string =>
  `${operator} needs a number, and ${found} is ${kind}.`;
export const notLogic = (operator: string, found: string, kind: string): string =>
  `${operator} needs a condition such as o2_pct > 3, and ${found} is ${kind}.`;
export const notComparable = (operator: string, left: string, right: string): string =>
  `${operator} compares ${left} with ${right}; both sides must be of one kind.`;
export const powerNeedsNumber = (base: string, unit: string): string =>
  `** raises ${base} in ${unit} to a power that is no plain number; a quantity with a unit takes a whole number such as 2.`;
export const powerNotWhole = (base: string, unit: string, exponent: number): string =>
  `** raises ${base} in ${unit} to the power ${exponent}, which has no unit; take a whole number up to 12, or divide ${base} by a quantity of its kind first.`;
export const wrongCount = (name: string, wanted: string, found: number): string =>
  `${name} takes ${wanted}, and ${found} ${found === 1 ? 'was' : 'were'} given.`;
export const wrongUnit = (name: string, found: string, unit: string, wanted: string): string =>
  `${name} needs ${wanted}, and ${found} is in ${unit}.`;
export const notFixed = (name: string, found: string): string =>
  `${name} takes fixed limits, and ${found} changes from row to row; compare with < and ? : instead.`;
export const notAReference = (name: string, found: string): string =>
  `${name} takes a reference O2 from 0 to below 20.9 %, and ${found} is none.`;
export const mixedKinds = (name: string, first: string, firstKind: string, other: string, otherKind: string): string =>
  `${name} takes values of one kind; ${first} is ${firstKind}, and ${other} is ${otherKind}.`;
export const needsText = (name: string, wanted: string): string => `${name} needs ${wanted} in quotes.`;
export const unknownUnit = (written: string, nearest: string): string =>
  `the unit "${written}" is not known${nearest === '' ? '' : `: did you mean ${nearest}?`}`;
export const needsColumn = (name: string, found: string): string =>
  `${name} groups by columns such as unit, fire or year(taken_at), and ${found} is a text in quotes.`;
export const resultUnit = (found: string, wanted: string): string =>
  `its result is in ${found}, and the column is declared in ${wanted}, which measures something else.`;
export const resultKind = (found: string): string => `its result is ${found}, and a column holds numbers.`;
export const badDate = (written: string): string => `"${written}" is no date; write it as 2024-01-31.`;
