import { REGULATORY_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';
import * as message from '../messages/formula.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import type { Builder, FormulaFunction, Value } from './builder.ts';
import type { Expression } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';
import { WITHIN } from './numeric-functions.ts';
import { parseFormula } from './parse-formula.ts';

type Call = Extract<Expression, { kind: 'call' }>;
const PERCENT = findUnit('%') as Unit;

/** Of each function: what it refers to another O2. All begin with an air-free number, so that nothing is converted twice. */
const WHAT: readonly (readonly [name: string, airFree: string, title: string])[] = [
  ['co_at_o2', 'co_air_free_ppm', 'CO at another O2, dry, ppm; O2 in air pinned to 20.9 %'],
  ['nox_at_o2', 'nox_air_free_ppm', 'NOx at another O2, dry, ppm; O2 in air pinned to 20.9 %'],
  [
    'co_mg_per_m3_at_o2',
    'co_air_free_ppm * co_mass / molar_volume',
    'CO at another O2, mg/m³ dry at 0 °C and 101.325 kPa',
  ],
  [
    'nox_mg_per_m3_at_o2',
    'nox_air_free_ppm * no2_mass / molar_volume',
    'NOx as NO2 at another O2, mg/m³ dry at 0 °C and 101.325 kPa',
  ],
];

/** Emissions at any reference O2: co_at_o2(7) is CO at 7 % O2. */
export const EMISSION_FUNCTIONS: readonly FormulaFunction[] = WHAT.map(([name, airFree, title]) => ({
  name,
  usage: `${name}(7)`,
  title,
  build(call, builder) {
    if (call.arguments.length !== 1)
      throw new FormulaFault(message.wrongCount(name, 'one O2 in %', call.arguments.length), call);
    const reference = referenceStep(call, builder);
    const base = airFreeValue(call, airFree, builder);
    const share = builder.steps.affine(reference, -1 / REGULATORY_OXYGEN_PCT, 1);
    return { step: builder.steps.multiply(base.step, share), type: base.type, span: call };
  },
}));

/** The reference O2 in percent; a plain number counts as percent. */
function referenceStep(call: Call, builder: Builder): number {
  const part = call.arguments[0];
  const value = builder.build(part);
  const bare = value.type.kind === 'number' && value.type.bare;
  const step = bare ? value.step : builder.inUnit(value, PERCENT, call.name);
  const fixed = builder.steps.valueOf(step);
  if (fixed !== undefined && !(fixed >= 0 && fixed < REGULATORY_OXYGEN_PCT))
    throw new FormulaFault(message.notAReference(call.name, builder.quote(part)), part);
  if (fixed !== undefined) return step;
  return builder.steps.apply(WITHIN, [step, builder.steps.constant(0), builder.steps.constant(REGULATORY_OXYGEN_PCT)]);
}

/** A fault in it (a scope without these relations) is the call's, since its own text is nowhere written. */
function airFreeValue(call: Call, text: string, builder: Builder): Value {
  try {
    return builder.build(parseFormula(text));
  } catch (fault) {
    throw fault instanceof FormulaFault ? new FormulaFault(fault.problem, call) : fault;
  }
}
