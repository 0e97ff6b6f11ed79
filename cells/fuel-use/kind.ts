import type { CellKind } from '../../shared/cell.ts';
import { fuelUseAnswer } from '../../shared/messages/import.ts';
import { listKind } from '../../shared/readings/list-kind.ts';
import { fuelUseSchema } from '../../shared/schemas/fuel-use.ts';
import { compute, type FuelUseResult } from './compute.ts';
import { type FuelUseParameters, readParameters } from './parameters.ts';

export const kind: CellKind<FuelUseParameters, FuelUseResult> = listKind({
  name: 'fuel-use',
  title: 'Fuel use',
  purpose: 'Says what fuel the units used and what it cost, so that savings can be given in fuel and money.',
  begins: 'What the units used stands in ',
  table: 'use',
  schema: fuelUseSchema,
  answer: fuelUseAnswer,
  readParameters,
  compute,
});
