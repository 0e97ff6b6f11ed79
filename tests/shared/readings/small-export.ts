import { kind } from '../../../cells/readings/kind.ts';

export const HEAD = 'unit,taken_at,fire,state,o2_pct,co_ppm,note';
/** An export of these lines below the head. */
export const csv = (...rows: string[]): string => `${[HEAD, ...rows].join('\n')}\n`;
export const GOOD = 'B-01,2024-03-13T10:15,high,as_found,4.6,28,';

export const remarks = (result: Parameters<typeof kind.describe>[0]): string[] =>
  kind
    .describe(result)
    .remarks.map(({ severity, text, byCommand = '' }) => `${severity}: ${text} ${byCommand}`.trimEnd());
