/**
 * Bands for lanes whose register says nothing: usual settings and tolerances of the trade, in points of dry O2.
 * Common practice, no source; the rating plate, the maker's manual and the permit win, and every use is remarked on.
 * '' matches anything; the first row that matches counts.
 */
export interface DefaultBand {
  readonly burner: string;
  readonly control: string;
  /** gas or oil. */
  readonly fuelKind: string;
  readonly fire: string;
  /** Usual setting. */
  readonly fromO2: number;
  readonly toO2: number;
  /** Usual tolerance below and above what was set. */
  readonly below: number;
  readonly above: number;
}

const row = (
  burner: string,
  control: string,
  fuelKind: string,
  fire: string,
  [fromO2, toO2]: readonly [number, number],
  [below, above]: readonly [number, number],
): DefaultBand => ({ burner, control, fuelKind, fire, fromO2, toO2, below, above });

export const DEFAULT_BANDS: readonly DefaultBand[] = [
  row('', '', 'oil', 'low', [4, 7], [0.75, 0.75]),
  row('', '', 'oil', '', [3, 6], [0.75, 0.75]),
  row('premix', '', '', 'low', [5, 7], [0.5, 0.5]),
  row('premix', '', '', '', [4.5, 6], [0.5, 0.5]),
  row('power', 'parallel', '', 'low', [4, 6], [0.5, 0.5]),
  row('power', 'parallel', '', '', [3, 4], [0.5, 0.5]),
  row('power', '', '', 'low', [5, 8], [1, 1]),
  row('power', '', '', '', [3, 5], [0.5, 0.5]),
  row('atmospheric', '', '', '', [6, 10], [1.5, 1.5]),
];

/** Tolerance where not even the burner is known: the widest common one. */
export const UNKNOWN_BURNER_TOLERANCE_O2 = 1;
