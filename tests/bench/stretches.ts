import type { CellKind } from '../../shared/cell.ts';

/** The longest time for which a cell let nobody else in, by cell and stage, ms. */
export type Stretches = Map<string, { longestMs: number; totalMs: number }>;

/** A catalogue that notes which kind is at work, and a watch that measures how long each one holds the thread. */
export function watchStretches(catalogue: ReadonlyMap<string, CellKind>): {
  readonly watched: ReadonlyMap<string, CellKind>;
  readonly stretches: Stretches;
  end(): void;
} {
  const stretches: Stretches = new Map();
  let at = 'nobody';
  let last = performance.now();
  const note = (): void => {
    const now = performance.now();
    const known = stretches.get(at) ?? { longestMs: 0, totalMs: 0 };
    stretches.set(at, { longestMs: Math.max(known.longestMs, now - last), totalMs: known.totalMs + now - last });
    last = now;
  };
  const during = async <T>(name: string, work: () => Promise<T>): Promise<T> => {
    note();
    at = name;
    try {
      return await work();
    } finally {
      note();
      at = `after ${name}`;
    }
  };
  const watched = new Map(
    [...catalogue].map(([name, kind]): [string, CellKind] => [
      name,
      {
        ...kind,
        compute: (...given) => during(name, () => kind.compute(...given)),
        ...(kind.fit && {
          fit: {
            ...kind.fit,
            compute: (...given: Parameters<NonNullable<typeof kind.fit>['compute']>) =>
              during(`${name} fit`, () => (kind.fit as NonNullable<typeof kind.fit>).compute(...given)),
          },
        }),
      },
    ]),
  );
  let over = false;
  const turn = (): void => {
    note();
    if (!over) setImmediate(turn);
  };
  setImmediate(turn);
  return {
    watched,
    stretches,
    end: () => {
      over = true;
    },
  };
}
