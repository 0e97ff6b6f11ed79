import type { Reason } from '../finding.ts';

/** A test of something that is no drift of a level. Every test counts for the false discovery rate, told or not. */
export interface Sign {
  readonly unit: string;
  readonly fuel: string;
  readonly fire: string;
  readonly reason: Reason;
  /** One-sided, 0..1. */
  readonly pValue: number;
  /** Whether it would matter if it were true; the others are tests only. */
  readonly matters: boolean;
  readonly evidence: string;
  readonly readingsUsed: number;
}

/** Events after which flue temperature, scatter and returns begin anew. */
export const NEW_BEGINNINGS: readonly string[] = ['replaced', 'converted', 'burner_parts', 'gas_valve', 'cleaned'];
