import { COMBUSTION_SOURCES } from './combustion.ts';
import { FUEL_SOURCES } from './fuels.ts';
import { SAFETY_SOURCES } from './safety.ts';
import { SAVINGS_SOURCES } from './savings.ts';
import type { Source } from './source.ts';
import { STATISTICS_SOURCES } from './statistics.ts';

const SOURCES: Readonly<Record<string, Source>> = {
  ...STATISTICS_SOURCES,
  ...SAVINGS_SOURCES,
  ...SAFETY_SOURCES,
  ...FUEL_SOURCES,
  ...COMBUSTION_SOURCES,
};

/** The entry of the bibliography that a step of a working names by its key. */
export const findSource = (key: string): Source | undefined => (Object.hasOwn(SOURCES, key) ? SOURCES[key] : undefined);
