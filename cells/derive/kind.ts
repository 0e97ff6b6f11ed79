import type { CellKind, ShownColumn } from '../../shared/cell.ts';
import { DERIVED_COLUMNS } from '../../shared/combustion/derived-columns.ts';
import { FUELS } from '../../shared/fuels/fuel-list.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { exponentsSchema } from '../../shared/schemas/exponents.ts';
import { fuelsSchema } from '../../shared/schemas/fuels.ts';
import { spreadsSchema } from '../../shared/schemas/spreads.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { registerBlank } from '../../shared/sentence/register-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type DeriveResult } from './compute.ts';
import { type DeriveParameters, readParameters } from './parameters.ts';

const AS_WRITTEN = { value: '', label: 'natural gas, flagged as assumed' };

export const kind: CellKind<DeriveParameters, DeriveResult> = {
  name: 'derive',
  title: 'Derived',
  purpose:
    'Works out excess air, air-free CO, losses, efficiency, dew point and supply drop, each with its uncertainty.',
  readParameters,
  reads: ({ readings, register }) => [...readOf(readings, 'accepted'), ...readOf(register, 'units')],
  sources: () => [],
  settings: ['referenceAirC'],
  sentence: ({ readings, register, defaultFuel, missingAirC, relativeHumidityPct, exponentSource }) => [
    'Derive excess air, air-free CO, losses, efficiency, dew point and supply drop from ',
    readingsBlank(readings),
    ' and the burners of ',
    registerBlank(register),
    '; where no fuel is named take ',
    choiceBlank('defaultFuel', 'fuel where none is named', defaultFuel, [
      AS_WRITTEN,
      ...FUELS.map(({ name, title }) => ({ value: name, label: title })),
    ]),
    ', where no air temperature ',
    numberBlank('missingAirC', 'air temperature where none is given', missingAirC, {
      minimum: -40,
      maximum: 60,
      unit: '°C',
    }),
    '; the air’s relative humidity is ',
    numberBlank('relativeHumidityPct', 'relative humidity of the air', relativeHumidityPct, {
      minimum: 0,
      maximum: 100,
      unit: '%',
    }),
    '; the exponents of the air’s density are those of ',
    choiceBlank('exponentSource', 'density exponents', exponentSource, [
      { value: 'table', label: 'the table of burners' },
      { value: 'fleet', label: 'the fleet’s own readings' },
    ]),
    '.',
  ],
  compute,
  describe: (result) => ({
    answer: result.answer,
    tables: [
      { table: 'derived', title: 'Derived readings', columns: columnsOf(result) },
      { table: 'exponents', title: 'Density exponents of the burners', columns: shownColumns(exponentsSchema) },
      { table: 'spreads', title: 'Standard uncertainties of the analyzers', columns: shownColumns(spreadsSchema) },
      { table: 'fuels', title: 'Fuels', columns: shownColumns(fuelsSchema) },
    ],
    figures: [],
    remarks: result.remarks,
  }),
  working: ({ working }, column, row) => working(column, row),
  files: ({ tables }) => [{ name: 'derived.csv', table: tables.derived }],
};

const isDerived = (name: string): boolean => DERIVED_COLUMNS.some((column) => column === name);

/** On screen the key, the numbers and the flags; the uncertainties are in the file and beside the working. */
function columnsOf({ tables, own }: DeriveResult): ShownColumn[] {
  const built = shownColumns(derivedSchema)
    .filter(({ column }) => !column.endsWith('_sd'))
    .map((shown): ShownColumn => (isDerived(shown.column) ? { ...shown, worked: true } : shown));
  const added = own.map((name): ShownColumn => {
    const column = tables.derived.columns.get(name);
    return {
      column: name,
      title: name,
      unit: column?.kind === 'number' && column.unit !== '1' ? column.unit : '',
      digits: 3,
      worked: true,
    };
  });
  return [...built.slice(0, -1), ...added, ...built.slice(-1)];
}
