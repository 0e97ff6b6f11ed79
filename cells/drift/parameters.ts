import { DEFAULT_BANDS, type DefaultBand } from '../../shared/foresight/default-bands.ts';
import { readFields } from '../../shared/foresight/read-fields.ts';
import { notABand, notAChoice } from '../../shared/messages/foresight.ts';
import { fail, type Outcome } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface DriftParameters {
  readonly readings: string;
  readonly derive: string;
  readonly register: string;
  readonly events: string;
  /** Counted from the day the notebook looks from. */
  readonly horizonDays: number;
  /** Whether levels are judged at reference air (20 °C, 101.325 kPa) or as measured. */
  readonly referenceAir: boolean;
  /** Which quantity a lane is judged in: the one its target is written in, or always this one. */
  readonly quantity: 'as_target' | 'o2_pct' | 'co2_pct';
  /** Usual settings and tolerances for lanes of which the register says nothing, in points of O2. */
  readonly bands: readonly DefaultBand[];
}

export const DRIFT_DEFAULTS: DriftParameters = {
  readings: 'readings',
  derive: 'derive',
  register: 'register',
  events: '',
  horizonDays: 365,
  referenceAir: true,
  quantity: 'as_target',
  bands: DEFAULT_BANDS,
};

export function readParameters(raw: unknown): Outcome<DriftParameters> {
  const read = readFields('drift', DRIFT_DEFAULTS, raw, {
    horizonDays: { title: 'the horizon in days', from: 1, to: 3653 },
  });
  if (read.status !== 'value') return read;
  const { quantity, bands } = read.value;
  if (!['as_target', 'o2_pct', 'co2_pct'].includes(quantity))
    return fail(notAChoice('drift', 'the quantity', 'as_target, o2_pct, co2_pct', quantity));
  if (!Array.isArray(bands)) return fail(notABand('drift', String(JSON.stringify(bands))));
  const wrong = bands.find((band) => !isBand(band));
  if (wrong !== undefined) return fail(notABand('drift', String(JSON.stringify(wrong))));
  return read;
}

function isBand(raw: unknown): raw is DefaultBand {
  const band = (raw ?? {}) as Record<string, unknown>;
  return (
    ['burner', 'control', 'fuelKind', 'fire'].every((name) => typeof band[name] === 'string') &&
    ['fromO2', 'toO2', 'below', 'above'].every((name) => Number.isFinite(band[name]))
  );
}
