import { findSource } from './find-source.ts';

/** Short form of a source of the derivations, with how it is known; the user's own formulas have none. */
export function sourceTitle(key: string): string {
  const found = findSource(key);
  if (!found) return 'A formula of this notebook';
  const { short, standing } = found;
  return standing === 'seen' || standing === 'common practice' ? short : `${short} (${standing})`;
}
