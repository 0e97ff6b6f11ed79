import { describe, expect, test } from 'vitest';
import { kind as note } from '../../../cells/note/kind.ts';
import type { CellKind } from '../../../shared/cell.ts';
import { Session } from '../../../src/notebook/session.ts';
import { type Counts, notebookOf, sumCell, sumKind } from './fixtures.ts';

function sessionOf(
  counts: Counts,
  cells = [sumCell('a', [], { add: 1 }), sumCell('b', ['a'], { add: 1 }), sumCell('c', ['b'])],
) {
  const session = new Session(
    new Map([
      ['sum', sumKind(counts)],
      ['note', note as CellKind],
    ]),
  );
  session.open(notebookOf(cells), new Map());
  return session;
}

const answers = (session: Session): (string | undefined)[] =>
  session.states().map(({ description }) => description?.answer);

describe('a session', () => {
  test('calculates, follows an edit and undoes it without calculating', async () => {
    const counts = { fits: 0, judgements: 0 };
    const session = sessionOf(counts);
    const before = session.document();
    await session.calculate();
    expect(answers(session)).toEqual(['The sum is 1.', 'The sum is 2.', 'The sum is 2.']);
    session.setParameter('a', 'add', 5);
    await session.calculate();
    expect(answers(session)).toEqual(['The sum is 5.', 'The sum is 6.', 'The sum is 6.']);
    expect(counts).toEqual({ fits: 6, judgements: 6 });
    session.undo();
    await session.calculate();
    expect(answers(session)).toEqual(['The sum is 1.', 'The sum is 2.', 'The sum is 2.']);
    expect(session.document()).toBe(before);
    session.redo();
    await session.calculate();
    expect(answers(session)[2]).toBe('The sum is 6.');
    expect(counts).toEqual({ fits: 6, judgements: 6 });
  });

  test('a changed band judges again, does not fit again, and says so; readers of the sum are left alone', async () => {
    const counts = { fits: 0, judgements: 0 };
    const session = sessionOf(counts);
    await session.calculate();
    session.setParameter('a', 'band', 0.5);
    await session.calculate();
    expect(counts).toEqual({ fits: 3, judgements: 4 });
    expect(session.why('a')).toBe('Judged again without fitting again. Calculated again because band changed.');
    expect(session.why('b')).toMatch(/^Not calculated again/);
  });

  test('says why in one sentence', async () => {
    const session = sessionOf({ fits: 0, judgements: 0 });
    expect(session.why('a')).toBe('Not calculated yet.');
    await session.calculate();
    expect(session.why('a')).toBe('Calculated for the first time.');
    session.setParameter('a', 'add', 2);
    await session.calculate();
    expect(session.why('a')).toBe('Calculated again because add changed.');
    expect(session.why('b')).toBe('Calculated again because what it reads from a changed.');
    session.undo();
    await session.calculate();
    expect(session.why('b')).toMatch(/that result was kept/);
  });

  test('a cycle, a missing cell and an unknown kind are named; the rest works', async () => {
    const session = sessionOf({ fits: 0, judgements: 0 }, [
      sumCell('a', ['b']),
      sumCell('b', ['a']),
      sumCell('lost', ['nowhere']),
      { name: 'strange', kind: 'hologram', parameters: { keep: 'me' } },
      sumCell('free', [], { add: 3 }),
    ]);
    await session.calculate();
    const messages = Object.fromEntries(session.states().map(({ name, message }) => [name, message]));
    expect(messages.a).toContain('a reads b reads a');
    expect(messages.lost).toContain('nowhere');
    expect(messages.strange).toContain('hologram');
    expect(session.state('free')?.phase).toBe('done');
    expect(session.document().cells[3].parameters).toEqual({ keep: 'me' });
  });

  test('a refused edit changes nothing and says why', () => {
    const session = sessionOf({ fits: 0, judgements: 0 });
    const before = session.document();
    expect(session.setParameter('a', 'add', 'many')).toEqual({
      status: 'error',
      message: 'sum: add must be a number.',
    });
    expect(session.setParameter('nobody', 'add', 1).status).toBe('error');
    expect(session.setParameter('a', 'colour', 1).status).toBe('error');
    expect(session.setParameter('a', 'text', 'x'.repeat(10_000_000))).toMatchObject({
      message: expect.stringContaining('10 MB'),
    });
    expect(session.document()).toBe(before);
    expect(session.steps()).toEqual({ back: 0, forward: 0 });
  });

  test('10 MB in a saved note: the cell says so, nothing is lost, the rest works', async () => {
    const heavy = { name: 'novel', kind: 'note', parameters: { text: 'x'.repeat(10_000_000) } };
    const session = sessionOf({ fits: 0, judgements: 0 }, [heavy, sumCell('a', [], { add: 1 })]);
    await session.calculate();
    expect(session.state('novel')).toMatchObject({ phase: 'failed', message: expect.stringContaining('10 MB') });
    expect(session.state('a')?.phase).toBe('done');
    expect(session.document().cells[0]).toBe(heavy);
  });

  test('tells of the cells that changed, and of no others', async () => {
    const session = sessionOf({ fits: 0, judgements: 0 });
    await session.calculate();
    const told: string[] = [];
    const stop = session.onState((changed) => told.push(...changed.map(({ name }) => name)));
    session.setParameter('c', 'add', 9);
    await session.calculate();
    expect(told).toContain('c');
    expect(session.state('c')?.description?.answer).toBe('The sum is 11.');
    stop();
  });

  test('writes the files of finished cells only, each under a name of its own', async () => {
    const session = sessionOf({ fits: 0, judgements: 0 }, [sumCell('a', [], { add: 1 }), sumCell('b', ['gone'])]);
    await session.calculate();
    expect(session.outputFiles().map(({ name, cell }) => [name, cell])).toEqual([['sum.csv', 'a']]);
  });
});
