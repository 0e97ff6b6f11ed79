import type { Fuel } from './fuel.ts';
import { readFuel } from './read-fuel.ts';

/** The notebook's own fuels; those that cannot be read have been refused at the door. */
export function ownFuels(fuels: readonly unknown[]): Fuel[] {
  return fuels.flatMap((raw) => {
    const fuel = readFuel(raw);
    return fuel.status === 'value' ? [fuel.value] : [];
  });
}
