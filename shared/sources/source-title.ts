import { COMBUSTION_SOURCES } from './combustion.ts';
import { FUEL_SOURCES } from './fuels.ts';
import type { Source } from './source.ts';

const SOURCES: Readonly<Record<string, Source>> = { ...FUEL_SOURCES, ...COMBUSTION_SOURCES };

/** Short form of a source of the derivations, with how it is known; the user's own formulas have none. */
export function sourceTitle(key: string): string {
  if (!Object.hasOwn(SOURCES, key)) return 'A formula of this notebook';
  const { short, standing } = SOURCES[key];
  return standing === 'seen' || standing === 'common practice' ? short : `${short} (${standing})`;
}
