import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { CellKind } from '../../../shared/cell.ts';
import { openNotebook } from '../../../src/cli/calculate.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { Session } from '../../../src/notebook/session.ts';
import { writtenFiles } from '../../../src/notebook/written-files.ts';

const SAMPLE = join(import.meta.dirname, '../../../sample-data');
type Opened = Awaited<ReturnType<typeof openNotebook>>;
let opened: Opened;
beforeAll(async () => {
  opened = await openNotebook(SAMPLE, 'campus-review.json');
});

/**
 * The kinds, with a list of what was calculated: a kind's name, and "fit" behind it for its first stage.
 * @param held a promise that a calculation waits for before it begins
 */
function counted(held: (name: string) => Promise<void> | undefined = () => undefined): {
  readonly kinds: Map<string, CellKind>;
  readonly calculated: string[];
} {
  const calculated: string[] = [];
  const begin = async <T>(name: string, go: () => Promise<T>): Promise<T> => {
    calculated.push(name);
    await held(name);
    return go();
  };
  const kinds = [...catalogue].map(([name, kind]): [string, CellKind] => [
    name,
    {
      ...kind,
      compute: (...given) => begin(name, () => kind.compute(...given)),
      ...(kind.fit && {
        fit: {
          ...kind.fit,
          compute: (...given: Parameters<NonNullable<CellKind['fit']>['compute']>) =>
            begin(`${name} fit`, () => (kind.fit as NonNullable<CellKind['fit']>).compute(...given)),
        },
      }),
    },
  ]);
  return { kinds: new Map(kinds), calculated };
}

function open(kinds: ReadonlyMap<string, CellKind> = catalogue): Session {
  const session = new Session(kinds);
  session.open(opened.document, opened.files);
  return session;
}

const bytesOf = (session: Session): Record<string, string> =>
  Object.fromEntries(writtenFiles(session).map(({ name, pieces }) => [name, [...pieces()].join('')]));

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('a newer change while a cell is at work', () => {
  test.each(['drift fit', 'raise fit'])('ends the calculation at %s and leaves no trace', async (at) => {
    let letGo = (): void => {};
    const gate = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const { kinds, calculated } = counted((name) => (name === at ? gate : undefined));
    const session = open(kinds);
    const first = session.calculate();
    while (!calculated.includes(at)) await turn();
    const edited = session.setParameter('raise', 'leastChance', 0.4);
    expect(edited.status).toBe('value');
    const cell = at.replace(' fit', '');
    expect(session.state(cell)?.phase).not.toBe('done');
    const second = session.calculate();
    letGo();
    expect(await first).toBe('superseded');
    expect(await second).toBe('finished');
    // What had been finished is not calculated again, what was under way is.
    expect(calculated.filter((name) => name === 'readings')).toHaveLength(1);
    expect(calculated.filter((name) => name === at)).toHaveLength(2);
    const plain = open();
    plain.setParameter('raise', 'leastChance', 0.4);
    await plain.calculate();
    expect(bytesOf(session)).toEqual(bytesOf(plain));
  });
});

describe('a calculation that is stopped', () => {
  test('leaves what it did not come to as it was and says so; going on comes to the same bytes', async () => {
    let letGo = (): void => {};
    let gate: Promise<void> | undefined;
    const { kinds, calculated } = counted((name) => (name === 'drift fit' ? gate : undefined));
    const session = open(kinds);
    await session.calculate();
    gate = new Promise((resolve) => {
      letGo = resolve;
    });
    const edited = session.setParameter('drift', 'referenceAir', false);
    expect(edited.status).toBe('value');
    calculated.length = 0;
    const first = session.calculate();
    while (!calculated.includes('drift fit')) await turn();
    session.stop();
    letGo();
    expect(await first).toBe('superseded');
    const stale = session.states().filter(({ stale }) => stale);
    expect(stale.map(({ name }) => name)).toEqual(expect.arrayContaining(['drift', 'raise']));
    expect(stale.map(({ name }) => name)).not.toContain('readings');
    expect(stale.every(({ phase, description }) => phase === 'done' && description !== undefined)).toBe(true);
    expect(await session.calculate()).toBe('finished');
    expect(session.states().filter(({ stale }) => stale)).toEqual([]);
    const plain = open();
    plain.setParameter('drift', 'referenceAir', false);
    await plain.calculate();
    expect(bytesOf(session)).toEqual(bytesOf(plain));
  });
});

describe('200 steps on the sample campus', () => {
  test('undone and done again calculate nothing, to the same bytes', async () => {
    const { kinds, calculated } = counted();
    const session = open(kinds);
    await session.calculate();
    const before = bytesOf(session);
    for (let step = 0; step < 200; step++) {
      expect(session.edit(editOf(step)).status).toBe('value');
      await session.calculate();
    }
    const after = bytesOf(session);
    expect(session.steps()).toEqual({ back: 200, forward: 0 });
    calculated.length = 0;
    for (let step = 0; step < 200; step++) {
      expect(session.undo().status).toBe('value');
      await session.calculate();
    }
    expect(bytesOf(session)).toEqual(before);
    for (let step = 0; step < 200; step++) {
      expect(session.redo().status).toBe('value');
      await session.calculate();
    }
    expect(bytesOf(session)).toEqual(after);
    expect(calculated).toEqual([]);
    expect(session.store().letGo.size).toBe(0);
  });
});

/** Mostly cheap edits, among them a few that drift, supply and raise have to judge for. */
function editOf(step: number): Edit {
  if (step % 40 === 0)
    return { operation: 'set-parameter', cell: 'drift', parameter: 'horizonDays', value: 300 + step };
  if (step % 40 === 10)
    return { operation: 'set-parameter', cell: 'supply', parameter: 'lookAheadYears', value: 2 + step / 100 };
  if (step % 10 === 5)
    return { operation: 'set-parameter', cell: 'raise', parameter: 'leastChance', value: 0.3 + step / 1000 };
  if (step % 10 === 7) return { operation: 'set-title', title: `Campus ${step}` };
  return { operation: 'set-parameter', cell: 'note', parameter: 'text', value: `Step ${step}` };
}
