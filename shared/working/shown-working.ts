import type { ReadingOrigin } from './reading-origin.ts';
import type { WorkedReading } from './worked-reading.ts';
import type { NumberPlace, Working } from './working.ts';

/** A source in full, for the foot of a working. */
export interface ShownSource {
  readonly key: string;
  readonly short: string;
  readonly full: string;
  /** How it is known: seen, secondary, memory, common practice. */
  readonly standing: string;
}

/** A reading of a working, and what the file says. */
export interface ShownReading extends WorkedReading {
  /** Undefined for a reading that no open file holds. */
  readonly origin: ReadingOrigin | undefined;
  /** What was put right between the file and the number, in the order of effect. */
  readonly amended: readonly string[];
}

/** Everything that page, report and terminal draw of one number's working. Plain data. */
export interface ShownWorking extends Omit<Working, 'readings'> {
  readonly place: NumberPlace;
  readonly readings: readonly ShownReading[];
  /** In the order in which the steps name them, each once. */
  readonly sources: readonly ShownSource[];
}
