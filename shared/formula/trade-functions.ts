import { enthalpyFunction } from '../combustion/enthalpy.ts';
import { NASA_FITS, type Species } from '../combustion/nasa-coefficients.ts';
import { saturationPressurePa, saturationSlopePaPerK, saturationTemperatureK } from '../combustion/saturation.ts';
import * as message from '../messages/formula.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import type { FormulaFunction } from './builder.ts';
import { FormulaFault } from './formula-fault.ts';
import { ofOne } from './numeric-functions.ts';
import type { NumericFunction } from './step.ts';
import { numberIn } from './value-type.ts';

const KELVIN = findUnit('K') as Unit;
const PASCAL = findUnit('Pa') as Unit;
const JOULE_PER_MOL = findUnit('J/mol') as Unit;

const ENTHALPY: Readonly<Record<string, NumericFunction>> = Object.fromEntries(
  (Object.keys(NASA_FITS) as Species[]).map((species) => {
    const { rise, heatCapacity } = enthalpyFunction(species);
    return [species, ofOne(`enthalpy_rise:${species}`, true, rise, heatCapacity)];
  }),
);

const VAPOR_PRESSURE = ofOne('saturation_pressure', true, saturationPressurePa, saturationSlopePaPerK);
const DEW_TEMPERATURE = ofOne(
  'saturation_temperature',
  true,
  saturationTemperatureK,
  (_, kelvin) => 1 / saturationSlopePaPerK(kelvin),
);

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
      const fn = gas.kind === 'text' ? ENTHALPY[gas.value] : undefined;
      if (!fn || gas.kind !== 'text' || !Object.hasOwn(ENTHALPY, gas.value))
        throw new FormulaFault(message.needsText(call.name, `one of ${Object.keys(ENTHALPY).join(', ')}`), gas);
      const kelvin = builder.inUnit(builder.build(temperature), KELVIN, call.name);
      return { step: builder.steps.apply(fn, [kelvin]), type: numberIn(JOULE_PER_MOL), span: call };
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
