import { plainName } from '../messages/lanes.ts';
import type { Schema } from '../table/schema.ts';
import { calibrationSchema, coverageSchema, forecastsSchema, methodsSchema } from './backcheck.ts';
import { derivedSchema } from './derived.ts';
import {
  airSchema,
  analyzersSchema,
  driftPathSchema,
  driftPointsSchema,
  driftSchema,
  gasMonthsSchema,
} from './drift.ts';
import { eventsSchema } from './events.ts';
import { findingsSchema } from './findings.ts';
import { fuelUseSchema } from './fuel-use.ts';
import { instrumentsSchema } from './instruments.ts';
import { raisedSchema } from './raised.ts';
import { accountSchema, duplicatesSchema, readingsSchema, setAsideSchema } from './readings.ts';
import { economicsSchema, limitsSchema, planningSchema, supplyLimitsSchema, unitsSchema } from './register.ts';
import { savingsSchema } from './savings.ts';
import { supplyPathSchema, supplyPointsSchema, supplySchema } from './supply.ts';

/** Where two tables have a column of one name, the first of them says what it is called. */
const SCHEMAS: readonly Schema[] = [
  derivedSchema,
  readingsSchema,
  setAsideSchema,
  duplicatesSchema,
  accountSchema,
  unitsSchema,
  limitsSchema,
  supplyLimitsSchema,
  economicsSchema,
  planningSchema,
  eventsSchema,
  fuelUseSchema,
  driftSchema,
  driftPointsSchema,
  driftPathSchema,
  analyzersSchema,
  airSchema,
  gasMonthsSchema,
  supplySchema,
  supplyPointsSchema,
  supplyPathSchema,
  instrumentsSchema,
  raisedSchema,
  savingsSchema,
  forecastsSchema,
  calibrationSchema,
  coverageSchema,
  methodsSchema,
  findingsSchema,
];

const TITLES: ReadonlyMap<string, string> = new Map(
  SCHEMAS.toReversed().flatMap((schema) => schema.map(({ name, title }) => [name, title] as const)),
);

/** What a column of any result table is called on screen and paper; a name that no table has is written plainly. */
export const columnTitle = (column: string): string => TITLES.get(column) ?? plainName(column);
