import type { Fuel } from './fuel.ts';
import { FUELS } from './fuel-list.ts';

/** Typical natural gas with the given percent of hydrogen by volume, 0..100. */
export function blendWithHydrogen(hydrogenPct: number): Fuel {
  const base = FUELS[0];
  if (base.composition.kind !== 'gas') throw new RangeError('only a gas is blended with hydrogen');
  const share = hydrogenPct / 100;
  const moles = Object.fromEntries(
    Object.entries(base.composition.moles).map(([name, fraction]) => [name, fraction * (1 - share)]),
  );
  return {
    name: `natural_gas_h2_${hydrogenPct}`,
    title: `natural gas with ${hydrogenPct} % hydrogen`,
    composition: { kind: 'gas', moles: { ...moles, hydrogen: share } },
    source: base.source,
    co2maxSdPct: base.co2maxSdPct * (1 - share),
  };
}
