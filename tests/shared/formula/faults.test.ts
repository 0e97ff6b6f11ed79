import { describe, expect, test } from 'vitest';
import { evaluateFormulas, faultOf } from './evaluate-formula.ts';

const COLUMNS = {
  flue_temperature: { unit: 'Cel', values: [200] },
  air_temperature: { unit: 'Cel', values: [20] },
  static_pressure: { unit: 'Pa', values: [2400] },
  o2_pct: { unit: '%', values: [5] },
  fire: { unit: 'text', values: ['high'] },
  taken_at: { unit: 'date', values: [20_000] },
};

describe('an error says where, what is wrong, what was found and what to do', () => {
  test('an unknown name is answered with the nearest', () => {
    const fault = faultOf('flue_temprature - air_temperature', COLUMNS);
    expect(fault).toContain('Formula own, line 1, place 1');
    expect(fault).toContain('did you mean flue_temperature?');
    expect(fault).toContain('  flue_temprature - air_temperature\n  ^^^^^^^^^^^^^^^');
  });

  test('a name like none is not guessed at', () => {
    expect(faultOf('zzz', COLUMNS)).toContain('nothing here is called zzz; the names are');
  });

  test('°C + Pa points at the operator, quotes both sides and says both units', () => {
    const fault = faultOf('flue_temperature + static_pressure', COLUMNS);
    expect(fault).toContain('flue_temperature in °C and static_pressure in Pa');
    expect(fault).toContain('  flue_temperature + static_pressure\n                   ^');
  });

  test.each([
    ['flue_temperature + air_temperature', 'only their difference has a meaning'],
    ['2 * flue_temperature', 'multiple means nothing'],
    ['flue_temperature / 2', 'multiple means nothing'],
    ['-flue_temperature', 'multiple means nothing'],
    ['flue_temperature - 20', 'say quantity(20, "Cel")'],
    ['o2_pct + static_pressure', 'measure different things'],
    ['static_pressure ** o2_pct', 'no plain number'],
    ['static_pressure ** 0.5', 'to the power 0.5, which has no unit'],
    ['static_pressure ** -1.5', 'to the power -1.5, which has no unit'],
    ['static_pressure ** 400', 'to the power 400, which has no unit'],
    ['(flue_temperature - air_temperature) ** (1 / 3)', 'which has no unit'],
    ['flue_temperature ** 2', 'multiple means nothing'],
    ['sqrt(flue_temperature)', 'multiple means nothing'],
    ['within(o2_pct, 0, static_pressure)', 'within needs %'],
    ['within(o2_pct, 0, o2_pct)', 'fixed limits'],
    ['ln(static_pressure)', 'ln needs'],
    ['fire + 1', 'fire is text'],
    ['fire == 3', 'must be of one kind'],
    ['o2_pct == "3"', 'must be of one kind'],
    ['taken_at * 2', 'a date'],
    ['o2_pct > 3', 'its result is a condition'],
    ['o2_pct ? 1 : 2', 'needs a condition'],
    ['o2_pct && o2_pct', 'needs a condition'],
    ['!o2_pct', 'needs a condition'],
    ['sqroot(o2_pct)', 'no function sqroot: did you mean sqrt?'],
    ['frobnicate(o2_pct)', 'there is no function frobnicate; the functions are'],
    ['min(o2_pct)', '1 was given'],
    ['known()', '0 were given'],
    ['mean(o2_pct, "high")', 'is a text in quotes'],
    ['mean(taken_at, fire)', 'mean needs a number'],
    ['otherwise(known(o2_pct), 1)', 'takes values of one kind'],
    ['enthalpy_rise("Xe", flue_temperature)', 'one of CO2'],
    ['enthalpy_rise("__proto__", flue_temperature)', 'one of CO2'],
    ['enthalpy_rise("CO2", static_pressure)', 'is in Pa'],
    ['as(static_pressure, "kpaa")', 'did you mean kpa?'],
    ['as(static_pressure, "Cel")', 'is in Pa'],
    ['quantity(20, "furlong per fortnight")', 'is not known'],
    ['date("2024-02-30")', 'no date'],
    ['a.__proto__', 'nothing here is called'],
    ['constructor', 'nothing here is called'],
    ['toString()', 'no function toString'],
    ['hasOwnProperty(o2_pct)', 'no function'],
  ])('%s', (formula, part) => {
    expect(faultOf(formula, COLUMNS)).toContain(part);
  });

  test('a power that a unit cannot take points at the operator', () => {
    for (const formula of ['static_pressure ** 0.5', 'static_pressure ** o2_pct'])
      expect(faultOf(formula, COLUMNS)).toContain(`  ${formula}\n                  ^^`);
  });

  test('the declared unit of a column is held', () => {
    expect(faultOf('static_pressure * 2', COLUMNS, '%')).toContain(
      'its result is in Pa, and the column is declared in %',
    );
  });

  test('a fault in a definition that another reads is named by its own formula', () => {
    const found = evaluateFormulas({ inner: '1 + nothing_such', outer: 'inner * 2' }, COLUMNS);
    expect(found).toMatchObject({
      status: 'error',
      message: expect.stringContaining('Formula inner, line 1, place 5'),
    });
  });

  test('a formula that reads itself is answered with the circle', () => {
    expect(evaluateFormulas({ a: 'a + 1' }, COLUMNS)).toMatchObject({
      message: expect.stringContaining('reads itself (a -> a)'),
    });
    expect(evaluateFormulas({ a: 'b + 1', b: 'c', c: '2 * a' }, COLUMNS)).toMatchObject({
      message: expect.stringContaining('(c -> a -> b -> c)'),
    });
  });

  test('the caret finds its line in a formula of several, and a long line is cut', () => {
    expect(faultOf('o2_pct\n  + wrong_name', COLUMNS)).toContain('line 2, place 5');
    const long = faultOf(`${'o2_pct + '.repeat(60)}wrong_name`, COLUMNS);
    expect(
      Math.max(
        ...long
          .split('\n')
          .slice(1)
          .map((line) => line.length),
      ),
    ).toBeLessThan(110);
  });
});
