import { describe, expect, test } from 'vitest';
import { CONSTANTS } from '../../../shared/combustion/relations/constants.ts';
import { RELATION_INPUTS } from '../../../shared/combustion/relations/inputs.ts';
import { RELATIONS } from '../../../shared/combustion/relations/relations.ts';
import { compileFormulas } from '../../../shared/formula/compile-formulas.ts';
import { Evaluator } from '../../../shared/formula/evaluator.ts';
import { fromConstant, type Sources } from '../../../shared/formula/sources.ts';
import { specialize } from '../../../shared/formula/specialize.ts';
import { textColumn } from '../../../shared/table/columns.ts';

const NAMES = RELATIONS.map(({ name }) => name);
const compiled = compileFormulas(NAMES, {
  inputs: RELATION_INPUTS,
  constants: new Map([...CONSTANTS, ['relative_humidity', { value: 0.3, unit: '1', symbol: '', title: '' }]]),
  definitions: new Map(RELATIONS.map((relation) => [relation.name, relation])),
  aliases: new Map(),
});
if (compiled.status !== 'value') throw new Error(JSON.stringify(compiled));
const program = compiled.value;

/** Plausible numbers for every input but those left out. */
function sourcesWithout(left: readonly string[], absent: ReadonlySet<string>): Sources {
  const given: Readonly<Record<string, number>> = {
    pressure_Pa: 101_000,
    site_pressure_Pa: 101_325,
    'burner.season': 1,
  };
  const names = [...RELATION_INPUTS.keys()];
  const numbers = names.map(
    (name, i) => [name, fromConstant(left.includes(name) ? Number.NaN : (given[name] ?? 2 + i / 7))] as const,
  );
  return {
    rows: 1,
    numbers: new Map(numbers),
    uncertainties: new Map(names.map((name) => [name, fromConstant(0.1)])),
    bounds: new Map(),
    texts: new Map([['reading.co2_from', textColumn([left.includes('reading.co2_from') ? '' : 'measured'])]]),
    absent,
  };
}

function evaluate(sources: Sources): readonly (readonly [string, number, number])[] {
  const columns = new Map(NAMES.map((name) => [name, { values: new Float64Array(1), sd: new Float64Array(1) }]));
  new Evaluator(program, sources, columns).run(0, 1);
  return NAMES.map((name) => [name, columns.get(name)?.values[0] ?? 0, columns.get(name)?.sd[0] ?? 0]);
}

describe('leaving out what is unknown in every row changes no result', () => {
  test.each([
    [['reading.o2_wet_pct']],
    [['reading.co2_pct', 'reading.co2_from']],
    [['reading.o2_pct']],
    [['reading.o2_pct', 'reading.co2_pct']],
    [['reading.co_ppm', 'reading.co_air_free_ppm', 'reading.nox_ppm']],
    [['reading.flue_C', 'reading.supply_static_Pa']],
    [['reading.co2_from']],
  ])('%j', (left) => {
    const whole = evaluate(sourcesWithout(left, new Set()));
    evaluate(sourcesWithout(left, new Set(left))).forEach(([name, value, sd], i) => {
      // Values to the last bit; the squares of an uncertainty may be added in another order.
      expect(value, name).toBe(whole[i][1]);
      if (Number.isNaN(sd)) expect(whole[i][2], name).toBeNaN();
      else expect(Math.abs(sd - whole[i][2]), name).toBeLessThanOrEqual(1e-14 * sd);
    });
  });

  test('and saves steps', () => {
    const less = specialize(program, new Set(['reading.o2_wet_pct', 'reading.co2_from', 'reading.co2_pct']));
    const live = (steps: typeof less.steps): number => steps.filter(({ op }) => op !== 'constant').length;
    expect(live(less.steps)).toBeLessThan(live(program.steps));
    expect(specialize(program, new Set()).steps).toBe(program.steps);
  });
});
