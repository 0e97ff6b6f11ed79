import type { Unit } from './unit.ts';
import { divideUnits, multiplyUnits, ONE, raiseUnit } from './unit-algebra.ts';
import { UNIT_CODES, UNIT_NAMES } from './unit-table.ts';

/**
 * The unit of a UCUM code or of a name people use ("in. w.c.", "inwc", "°F", "btuh"), also of a product or quotient of
 * them ("mg/m3", "mol/MJ", "/kW.h"); undefined where none is known.
 * A code counts as written; names are read without regard to case.
 */
export function findUnit(text: string): Unit | undefined {
  const trimmed = text.trim();
  return single(trimmed) ?? compound(trimmed);
}

function single(text: string): Unit | undefined {
  return UNIT_CODES.get(text) ?? UNIT_NAMES.get(text.toLowerCase().replace(/\s+/g, ' '));
}

/**
 * Products by a dot, quotients by a slash, a trailing whole number as exponent: m3, mg/m3, mol/MJ, /kW.h.
 * What follows a slash is one divisor ("/kW.h" is per kilowatt-hour), as tables are read; UCUM itself would want brackets.
 */
function compound(text: string): Unit | undefined {
  const slash = text.lastIndexOf('/');
  if (slash >= 0) {
    const above = slash === 0 ? ONE : findUnit(text.slice(0, slash));
    const below = text.slice(slash + 1).replace(/^\((.*)\)$/, '$1');
    const under = below === '' ? undefined : (single(below) ?? product(below));
    return above && under && !above.point && !under.point ? divideUnits(above, under) : undefined;
  }
  return product(text);
}

function product(text: string): Unit | undefined {
  let result = ONE;
  for (const word of text.split('.')) {
    const power = /^(.*?[^\d*-])(-?\d+)$/.exec(word);
    const plain = single(word);
    const based = plain ?? (power ? single(power[1]) : undefined);
    if (word === '' || !based || based.point) return undefined;
    result = multiplyUnits(result, plain ?? raiseUnit(based, Number(power?.[2])));
  }
  return result;
}
