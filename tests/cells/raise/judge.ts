import { compute, type RaiseResult } from '../../../cells/raise/compute.ts';
import { readParameters } from '../../../cells/raise/parameters.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { type Example, exampleContext, exampleInputs, exampleOf } from '../read-example.ts';

type Columns = Readonly<Record<string, readonly (string | number | null)[]>>;

export interface Raised {
  readonly unit: string;
  readonly fire: string;
  readonly fuel: string;
  readonly reason: string;
  readonly tier: string;
  readonly probability: number;
  readonly falseDiscoveryRate: number;
  readonly evidence: string;
  readonly checkFirst: string;
}

/** Tables of the cells that raise reads, by name of table; what is left out is not there. */
export interface Given {
  readonly accepted?: Columns;
  readonly derived?: Columns;
  readonly units?: Columns;
  readonly 'supply-limits'?: Columns;
  readonly economics?: Columns;
  readonly planning?: Columns;
  readonly events?: Columns;
  readonly drift?: Columns;
  readonly supply?: Columns;
  readonly instruments?: Columns;
}

const CELL_OF = {
  accepted: ['readings', 'readings'],
  derived: ['derive', 'derived'],
  units: ['register', 'units'],
  'supply-limits': ['register', 'supplyLimits'],
  economics: ['register', 'economics'],
  planning: ['register', 'planning'],
  events: ['events', 'events'],
  drift: ['drift', 'drift'],
  supply: ['supply', 'supply'],
  instruments: ['instruments', 'instruments'],
} as const;

/** Judges the given tables as of 2026-06-01, the cells that are not given being absent. */
export async function judge(given: Given, parameters: Readonly<Record<string, unknown>> = {}): Promise<RaiseResult> {
  const inputs: Record<string, { tables: Record<string, { schema: string; columns: Columns }> }> = {};
  for (const [table, columns] of Object.entries(given)) {
    const [cell, schema] = CELL_OF[table as keyof Given];
    const tables = inputs[cell]?.tables ?? {};
    inputs[cell] = { tables: { ...tables, [table]: { schema, columns } } };
  }
  const { register } = inputs;
  if (register && !register.tables['units']) register.tables['units'] = { schema: 'units', columns: { unit: [] } };
  const absent = ['readings', 'register', 'events', 'derive', 'drift', 'supply', 'instruments'].map((cell) => [
    cell,
    cell in inputs ? cell : '',
  ]);
  const read = readParameters({ ...Object.fromEntries(absent), ...parameters });
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const example: Example = { kind: 'raise', parameters: {}, as_of: '2026-06-01', inputs };
  const result = await compute(read.value, exampleInputs(example), await exampleContext(example));
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return result.value;
}

export async function raisedOf(given: Given, parameters: Readonly<Record<string, unknown>> = {}): Promise<Raised[]> {
  return readRaised(await judge(given, parameters));
}

/** `unit fire reason` of each, in the order raised. */
export const reasonsOf = async (...given: Parameters<typeof raisedOf>): Promise<string[]> =>
  (await raisedOf(...given)).map(({ unit, fire, reason }) => [unit, fire, reason].filter((part) => part).join(' '));

export async function raisedExample(): Promise<RaiseResult> {
  const example = exampleOf('raise');
  const read = readParameters(example.parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const result = await compute(read.value, exampleInputs(example), await exampleContext(example));
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return result.value;
}

export function readRaised({ tables: { raised } }: RaiseResult): Raised[] {
  return Array.from({ length: raised.rows }, (_, row) => {
    const text = (column: string): string => textAt(textsOf(raised, column), row);
    return {
      unit: text('unit'),
      fire: text('fire'),
      fuel: text('fuel'),
      reason: text('reason'),
      tier: text('tier'),
      probability: numbersOf(raised, 'probability')[row],
      falseDiscoveryRate: numbersOf(raised, 'false_discovery_rate')[row],
      evidence: text('evidence'),
      checkFirst: text('check_first'),
    };
  });
}
