import type { FormulaFunction } from './builder.ts';
import { EMISSION_FUNCTIONS } from './emission-functions.ts';
import { GROUP_FUNCTIONS } from './group-functions.ts';
import { PLAIN_FUNCTIONS } from './plain-functions.ts';
import { TRADE_FUNCTIONS } from './trade-functions.ts';

/** Every function a formula may call. */
export const FUNCTIONS: ReadonlyMap<string, FormulaFunction> = new Map(
  [...PLAIN_FUNCTIONS, ...GROUP_FUNCTIONS, ...TRADE_FUNCTIONS, ...EMISSION_FUNCTIONS].map((fn) => [fn.name, fn]),
);
