import { badText } from '../../shared/messages/chart.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

export interface ChartParameters {
  /** The cell and, of its tables, the one to draw from. */
  readonly cell: string;
  readonly table: string;
  /** Columns of that table. */
  readonly x: string;
  readonly y: string;
  /** '' to draw all alike. */
  readonly color: string;
  /** A condition in the formula language, such as unit == "B-07" && fire == "high"; '' for every row. */
  readonly where: string;
}

export const CHART_DEFAULTS: ChartParameters = {
  cell: 'derive',
  table: 'derived',
  x: 'taken_at',
  y: 'o2_reference_pct',
  color: 'fire',
  where: '',
};

export function readParameters(raw: unknown): Outcome<ChartParameters> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const parameters: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(CHART_DEFAULTS)) {
    parameters[key] = given[key] ?? value;
    if (typeof parameters[key] !== 'string') return fail(badText(key, JSON.stringify(parameters[key]) ?? 'nothing'));
  }
  return succeed(parameters as unknown as ChartParameters);
}
