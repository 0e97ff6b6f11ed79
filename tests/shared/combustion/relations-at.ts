import { CONSTANTS } from '../../../shared/combustion/relations/constants.ts';
import { RELATION_INPUTS } from '../../../shared/combustion/relations/inputs.ts';
import { RELATIONS } from '../../../shared/combustion/relations/relations.ts';
import { compileFormulas } from '../../../shared/formula/compile-formulas.ts';
import { Evaluator } from '../../../shared/formula/evaluator.ts';
import type { Program } from '../../../shared/formula/program.ts';
import { fromConstant, type OutputColumn } from '../../../shared/formula/sources.ts';
import { EPA_FACTORS } from '../../../shared/fuels/epa-factors.ts';
import { findFuel } from '../../../shared/fuels/find-fuel.ts';
import type { Fuel } from '../../../shared/fuels/fuel.ts';
import { fuelProperties } from '../../../shared/fuels/fuel-properties.ts';
import { textColumn } from '../../../shared/table/columns.ts';

/** Inputs of one reading, by the names that the relations use. Those left out are unknown. */
export interface Conditions {
  readonly inputs: Readonly<Record<string, number>>;
  /** Standard uncertainties of inputs. */
  readonly uncertainties?: Readonly<Record<string, number>>;
  readonly bounds?: Readonly<Record<string, number>>;
  readonly co2From?: string;
  readonly relativeHumidity?: number;
}

export interface Found {
  readonly value: number;
  readonly sd: number;
  readonly bound: number;
}

const NAMES = RELATIONS.map(({ name }) => name);

function programFor(relativeHumidity: number): Program {
  const humidity = { value: relativeHumidity, unit: '1', symbol: 'φ', title: '' };
  const compiled = compileFormulas(NAMES, {
    inputs: RELATION_INPUTS,
    constants: new Map([...CONSTANTS, ['relative_humidity', humidity]]),
    definitions: new Map(RELATIONS.map((relation) => [relation.name, relation])),
    aliases: new Map(),
  });
  if (compiled.status !== 'value') throw new Error(JSON.stringify(compiled));
  return compiled.value;
}

const DRY = programFor(0);

/** Every relation at one reading of a fuel: named, or given by its composition. */
export function relationsAt(fuel: string | Pick<Fuel, 'composition'>, conditions: Conditions): (name: string) => Found {
  const { inputs, uncertainties = {}, bounds = {}, co2From = '', relativeHumidity = 0 } = conditions;
  const found = typeof fuel === 'string' ? findFuel(fuel) : ({ status: 'value', value: fuel } as const);
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  const properties = fuelProperties(found.value);
  const values: Readonly<Record<string, number>> = {
    'burner.air_C': 20,
    pressure_Pa: 101_325,
    site_pressure_Pa: 101_325,
    'burner.temperature_exponent': 1,
    'burner.pressure_exponent': 1,
    'burner.season': 1,
    'fuel.air': properties.air,
    'fuel.oxygen': properties.oxygen,
    'fuel.carbon_dioxide': properties.carbonDioxide,
    'fuel.nitrogen': properties.nitrogen,
    'fuel.water': properties.water,
    'fuel.dry_flue': properties.dryFlue,
    'fuel.co2_max': properties.co2maxPct,
    'fuel.dry_ratio': properties.dryRatio,
    'fuel.net_over_gross': properties.netOverGross,
    'fuel.epa_fd': (typeof fuel === 'string' ? EPA_FACTORS.get(fuel)?.fd : undefined) ?? Number.NaN,
    'fuel.epa_fc': (typeof fuel === 'string' ? EPA_FACTORS.get(fuel)?.fc : undefined) ?? Number.NaN,
    ...inputs,
  };
  const outputs = new Map(
    NAMES.map((name): [string, Required<Omit<OutputColumn, 'window'>>] => [
      name,
      { values: new Float64Array(1), sd: new Float64Array(1), bounds: new Int8Array(1) },
    ]),
  );
  const sources = {
    rows: 1,
    numbers: new Map([...RELATION_INPUTS.keys()].map((name) => [name, fromConstant(values[name] ?? Number.NaN)])),
    uncertainties: new Map(Object.entries(uncertainties).map(([name, sd]) => [name, fromConstant(sd)])),
    bounds: new Map(Object.entries(bounds).map(([name, mark]) => [name, Int8Array.of(mark)])),
    texts: new Map([['reading.co2_from', textColumn([co2From])]]),
  };
  const program = relativeHumidity === 0 ? DRY : programFor(relativeHumidity);
  new Evaluator(program, sources, outputs).run(0, 1);
  return (name) => {
    const column = outputs.get(name);
    if (!column) throw new Error(`no relation ${name}`);
    return { value: column.values[0], sd: column.sd[0], bound: column.bounds[0] };
  };
}
