import { CONSTANTS } from '../../shared/combustion/relations/constants.ts';
import { RELATION_INPUTS } from '../../shared/combustion/relations/inputs.ts';
import { DRY_AIR_FORMULAS } from '../../shared/combustion/relations/loss-relations.ts';
import { RELATIONS } from '../../shared/combustion/relations/relations.ts';
import type { Definition, InputType, NamedConstant, Scope } from '../../shared/formula/definition.ts';
import { findUnit } from '../../shared/quantities/find-unit.ts';
import type { Table } from '../../shared/table/table.ts';
import type { DeriveParameters } from './parameters.ts';

const KELVIN = 273.15;

/** Everything that a formula of this cell may name. */
export function scopeOf(parameters: DeriveParameters, readings: Table, referenceAirC: number): Scope {
  const inputs = new Map<string, InputType>(RELATION_INPUTS);
  const aliases = new Map<string, string>();
  for (const [name, column] of readings.columns) {
    // A column in a unit that is not known cannot be reckoned with.
    if (column.kind === 'number' && !findUnit(column.unit)) continue;
    const type: InputType =
      column.kind === 'number'
        ? { kind: 'number', unit: column.unit, symbol: name, title: name }
        : { kind: column.kind };
    if (!inputs.has(`reading.${name}`)) inputs.set(`reading.${name}`, type);
    if (!inputs.has(name)) aliases.set(name, `reading.${name}`);
  }
  inputs.set('fuel', { kind: 'text' });
  const { relativeHumidityPct } = parameters;
  const reference = CONSTANTS.get('reference_air') as NamedConstant;
  const constants = new Map(CONSTANTS)
    .set('reference_air', { ...reference, value: referenceAirC + KELVIN })
    .set('relative_humidity', {
      value: relativeHumidityPct,
      unit: '%',
      symbol: 'φ',
      title: 'Relative humidity of the combustion air',
    });
  const definitions = new Map<string, Definition>(RELATIONS.map((relation) => [relation.name, relation]));
  if (relativeHumidityPct === 0)
    for (const [name, formula] of DRY_AIR_FORMULAS)
      definitions.set(name, { ...(definitions.get(name) as Definition), formula });
  for (const { name, unit, formula } of parameters.columns)
    definitions.set(name, { name, symbol: name, title: name, unit, formula, source: '', validity: '' });
  return { inputs, constants, definitions, aliases };
}
