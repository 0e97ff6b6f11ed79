/** Two documents hold different things in one place, and only the user can say which counts. */
export interface Conflict {
  /** Where: the same text for the same place in both. */
  readonly place: string;
  /** What both hold, in an order that does not depend on which document came first. */
  readonly values: readonly [unknown, unknown];
}

/** Which side counts, or undefined where nobody has said. */
export type Resolve = (conflict: Conflict, first: unknown, second: unknown) => 'first' | 'second' | undefined;
