import type { CorrectionDone } from './correction.ts';

/** Corrections that the user may accept: what speaks for them, and what they would do, each in words. */
export interface Proposal {
  readonly evidence: string;
  readonly words: string;
  readonly corrections: readonly CorrectionDone[];
}
