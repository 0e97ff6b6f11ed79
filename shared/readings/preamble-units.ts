import { conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { plainWords } from './plain-words.ts';

/** A unit that a line above the table gives for all columns of its kind. */
export interface UnitTold {
  readonly code: string;
  readonly reason: string;
}

const UNIT = /\b(?:units?|uom|\w*einheit(?:en)?|unites?|unidad(?:es)?|unita|eenhe(?:id|den))\b/;

/** "Temperature unit: Celsius", "Druckeinheit;mbar", "Units: °F, in. w.c.": the units that such lines name. */
export function preambleUnits(preamble: readonly (readonly string[])[]): readonly UnitTold[] {
  return preamble.flatMap((record) => {
    const cells = record.map((cell) => cell.trim()).filter((cell) => cell !== '');
    const line = cells.join(' ');
    const [name, ...values] = cells.flatMap((cell) => cell.split(/[:=]/));
    if (name === undefined || values.length === 0 || !UNIT.test(plainWords(name))) return [];
    return values
      .flatMap((value) => [value, ...value.split(/[,;]|\s\/\s|\band\b/)])
      .flatMap((value): UnitTold[] => {
        const code = findUnit(value.trim())?.code;
        return code === undefined || value.trim() === '' ? [] : [{ code, reason: `"${line}" above the table` }];
      });
  });
}

/** The one unit among them that can be that of a field; undefined where there is none, or more than one. */
export function unitToldFor(kept: string, told: readonly UnitTold[]): UnitTold | undefined {
  const into = findUnit(kept);
  const fitting = told.filter(({ code }) => {
    const from = findUnit(code);
    return from !== undefined && into !== undefined && conversion(from, into) !== undefined;
  });
  return new Set(fitting.map(({ code }) => code)).size === 1 ? fitting[0] : undefined;
}
