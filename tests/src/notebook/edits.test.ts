import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { Session } from '../../../src/notebook/session.ts';
import { writeDocument } from '../../../src/notebook/write-document.ts';
import { notebookOf, sumCell, sumKind } from './fixtures.ts';

const catalogue = new Map([['sum', sumKind()]]);
const start = notebookOf([sumCell('a', [], { add: 1 }), sumCell('b', ['a'], { text: 'a' }), sumCell('c', ['a', 'b'])], {
  outcomes: [{ unit: 'B-07', kept: true }],
});

function edited(edit: Edit) {
  const outcome = applyEdit(start, edit, catalogue);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

describe('edits', () => {
  test('renaming a cell: its readers follow, a text that only says the word does not', () => {
    const { cells } = edited({ operation: 'rename-cell', cell: 'a', to: 'first' });
    expect(cells.map(({ name, parameters }) => [name, parameters.reads, parameters.text])).toEqual([
      ['first', [], undefined],
      ['b', ['first'], 'a'],
      ['c', ['first', 'b'], undefined],
    ]);
  });

  test('adding, moving and removing keep the others as they are', () => {
    expect(edited({ operation: 'add-cell', name: 'd', kind: 'sum', at: 1 }).cells.map(({ name }) => name)).toEqual([
      'a',
      'd',
      'b',
      'c',
    ]);
    expect(edited({ operation: 'move-cell', cell: 'a', to: 2 }).cells.map(({ name }) => name)).toEqual(['b', 'c', 'a']);
    expect(edited({ operation: 'remove-cell', cell: 'b' }).cells.map(({ name }) => name)).toEqual(['a', 'c']);
    expect(start.cells.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
  });

  test.each<[string, Edit]>([
    ['a taken name', { operation: 'rename-cell', cell: 'a', to: 'b' }],
    ['a name that is none', { operation: 'rename-cell', cell: 'a', to: '#1' }],
    ['an unknown kind', { operation: 'add-cell', name: 'x', kind: 'hologram' }],
    ['a day that is none', { operation: 'set-as-of', asOf: '2026-02-30' }],
    ['a cell that is not there', { operation: 'remove-cell', cell: 'z' }],
    ['a bad parameter', { operation: 'add-cell', name: 'x', kind: 'sum', parameters: { add: 'many' } }],
  ])('%s is refused in one sentence', (_, edit) => {
    const outcome = applyEdit(start, edit, catalogue);
    expect(outcome.status).toBe('error');
    expect(outcome.status === 'error' && outcome.message).toMatch(/^[^\n]+[.]$/);
  });

  test('unknown fields survive every edit', () => {
    expect(edited({ operation: 'set-title', title: 'New' }).outcomes).toEqual([{ unit: 'B-07', kept: true }]);
  });
});

const names = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'long name');
const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    operation: fc.constant('set-parameter' as const),
    cell: names,
    parameter: fc.constantFrom('add', 'band', 'text'),
    value: fc.integer({ min: -9, max: 9 }),
  }),
  fc.record({ operation: fc.constant('add-cell' as const), name: names, kind: fc.constant('sum'), at: fc.nat(5) }),
  fc.record({ operation: fc.constant('remove-cell' as const), cell: names }),
  fc.record({ operation: fc.constant('move-cell' as const), cell: names, to: fc.nat(5) }),
  fc.record({ operation: fc.constant('rename-cell' as const), cell: names, to: names }),
  fc.record({ operation: fc.constant('set-title' as const), title: fc.string() }),
  fc.record({
    operation: fc.constant('set-setting' as const),
    setting: fc.constantFrom('currency', 'seed'),
    value: fc.nat(9),
  }),
);

describe('random edit sequences', () => {
  test('undone they give the same bytes, done again too', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 250, minLength: 200 }), (edits) => {
        const session = new Session(catalogue);
        session.open(start, new Map());
        const texts = [writeDocument(session.document())];
        for (const edit of edits) {
          const before = session.document();
          if (session.edit(edit).status === 'value' && session.document() !== before)
            texts.push(writeDocument(session.document()));
        }
        const end = texts.length - 1;
        expect(session.steps().back).toBe(end);
        for (let step = end - 1; step >= 0; step--) {
          session.undo();
          expect(writeDocument(session.document())).toBe(texts[step]);
        }
        expect(session.undo().status).toBe('error');
        for (let step = 1; step <= end; step++) {
          session.redo();
          expect(writeDocument(session.document())).toBe(texts[step]);
        }
      }),
      { numRuns: 6, seed: 3 },
    );
  });
});
