import { describe, expect, test } from 'vitest';
import { kind as note } from '../../../cells/note/kind.ts';
import type { CellKind } from '../../../shared/cell.ts';
import type { NotebookDocument } from '../../../src/notebook/document.ts';
import { Session } from '../../../src/notebook/session.ts';

const catalogue = new Map([['note', note as CellKind]]);
const notebook: NotebookDocument = {
  format: 'between-visits-notebook',
  version: 1,
  title: 'One note',
  as_of: '2026-03-31',
  settings: {},
  data: [],
  cells: [{ name: 'first', kind: 'note', parameters: { text: 'Read with the panel off.' } }],
};

describe('a session', () => {
  test('calculates, follows an edit and undoes it', async () => {
    const session = new Session(catalogue);
    session.open(notebook, new Map());
    await session.calculate();
    expect(session.states().map(({ phase, description }) => [phase, description?.answer])).toEqual([
      ['done', 'Read with the panel off.'],
    ]);
    session.setParameter('first', 'text', 'Panel on.');
    await session.calculate();
    expect(session.state('first')?.description?.answer).toBe('Panel on.');
    expect(session.why('first')).toContain('text');
    session.undo();
    await session.calculate();
    expect(session.state('first')?.description?.answer).toBe('Read with the panel off.');
    expect(session.document()).toBe(notebook);
  });
});
