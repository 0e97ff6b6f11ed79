import { enthalpyRises, heatCapacities } from '../combustion/enthalpy.ts';
import { NASA_FITS, type Species } from '../combustion/nasa-coefficients.ts';
import { saturationPressurePa, saturationSlopePaPerK, saturationTemperatureK } from '../combustion/saturation.ts';
import * as message from '../messages/formula.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import type { FormulaFunction } from './builder.ts';
import { FormulaFault } from './formula-fault.ts';
import { LN } from './numeric-functions.ts';
import type { NumericFunction } from './step.ts';
import { numberIn } from './value-type.ts';

const KELVIN = findUnit('K') as Unit;
const PASCAL = findUnit('Pa') as Unit;
const JOULE_PER_MOL = findUnit('J/mol') as Unit;

/** The logarithm of the temperature is a step of its own, since every gas at that temperature needs it. */
const ENTHALPY: ReadonlyMap<string, NumericFunction> = new Map(
  (Object.keys(NASA_FITS) as Species[]).map((species) => [
    species,
    {
      key: `enthalpy_rise:${species}`,
      helpers: 1,
      monotone: [true],
      values: (out, [kelvin, logarithm], n) => enthalpyRises(species, out, kelvin, logarithm, n),
      withPartials(out, [slope], [kelvin, logarithm], n) {
        enthalpyRises(species, out, kelvin, logarithm, n);
        heatCapacities(species, slope, kelvin, n);
      },
    },
  ]),
);

const VAPOR_PRESSURE: NumericFunction = {
  key: 'saturation_pressure',
  monotone: [true],
  values(out, [kelvin], n) {
    for (let i = 0; i < n; i++) out[i] = saturationPressurePa(kelvin[i]);
  },
  withPartials(out, [slope], [kelvin], n) {
    for (let i = 0; i < n; i++) {
      out[i] = saturationPressurePa(kelvin[i]);
      slope[i] = saturationSlopePaPerK(kelvin[i], out[i]);
    }
  },
};

const DEW_TEMPERATURE: NumericFunction = {
  key: 'saturation_temperature',
  monotone: [true],
  values(out, [pascal], n) {
    for (let i = 0; i < n; i++) out[i] = saturationTemperatureK(pascal[i]);
  },
  withPartials(out, [slope], [pascal], n) {
    for (let i = 0; i < n; i++) {
      out[i] = saturationTemperatureK(pascal[i]);
      slope[i] = 1 / saturationSlopePaPerK(out[i], pascal[i]);
    }
  },
};

/** The trade's own functions, each a named piece of physics that is no short formula. */
export const TRADE_FUNCTIONS: readonly FormulaFunction[] = [
  {
    name: 'enthalpy_rise',
    usage: 'enthalpy_rise("CO2", t)',
    title:
      'Molar enthalpy of a gas above 25 °C, J/mol (NASA nine-coefficient fits); CO2, H2O, N2, O2, Ar, CO, CH4, air',
    build(call, builder) {
      const [gas, temperature] = call.arguments;
      if (call.arguments.length !== 2)
        throw new FormulaFault(message.wrongCount(call.name, 'a gas and a temperature', call.arguments.length), call);
      const fn = gas.kind === 'text' ? ENTHALPY.get(gas.value) : undefined;
      if (!fn) throw new FormulaFault(message.needsText(call.name, `one of ${[...ENTHALPY.keys()].join(', ')}`), gas);
      const kelvin = builder.inUnit(builder.build(temperature), KELVIN, call.name);
      return {
        step: builder.steps.apply(fn, [kelvin, builder.steps.apply(LN, [kelvin])]),
        type: numberIn(JOULE_PER_MOL),
        span: call,
      };
    },
  },
  {
    name: 'saturation_pressure',
    usage: 'saturation_pressure(t)',
    title: 'Vapor pressure of water at a temperature, Pa (IAPWS-IF97)',
    build(call, builder) {
      if (call.arguments.length !== 1)
        throw new FormulaFault(message.wrongCount(call.name, 'one temperature', call.arguments.length), call);
      const kelvin = builder.inUnit(builder.build(call.arguments[0]), KELVIN, call.name);
      return { step: builder.steps.apply(VAPOR_PRESSURE, [kelvin]), type: numberIn(PASCAL), span: call };
    },
  },
  {
    name: 'saturation_temperature',
    usage: 'saturation_temperature(p)',
    title: 'Temperature at which water vapor of a partial pressure condenses (IAPWS-IF97)',
    build(call, builder) {
      if (call.arguments.length !== 1)
        throw new FormulaFault(message.wrongCount(call.name, 'one pressure', call.arguments.length), call);
      const pascal = builder.inUnit(builder.build(call.arguments[0]), PASCAL, call.name);
      const celsius = findUnit('Cel') as Unit;
      const step = builder.steps.affine(builder.steps.apply(DEW_TEMPERATURE, [pascal]), 1, -273.15);
      return { step, type: numberIn(celsius), span: call };
    },
  },
];
