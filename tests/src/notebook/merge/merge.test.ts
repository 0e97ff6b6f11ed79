import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kind as corrections } from '../../../../cells/corrections/kind.ts';
import type { CellKind } from '../../../../shared/cell.ts';
import { applyEdit } from '../../../../src/notebook/apply-edit.ts';
import { canonicalJson } from '../../../../src/notebook/canonical-json.ts';
import type { NotebookDocument } from '../../../../src/notebook/document.ts';
import type { Edit } from '../../../../src/notebook/edit.ts';
import { mergeDocuments } from '../../../../src/notebook/merge/merge-documents.ts';
import { mergeOrder } from '../../../../src/notebook/merge/merge-order.ts';
import { notebookOf, sumCell, sumKind } from '../fixtures.ts';

const catalogue = new Map<string, CellKind>([
  ['sum', sumKind()],
  ['corrections', corrections as CellKind],
]);
const data = [{ key: 'r.csv', name: 'r.csv', size: 9, hash: 'c'.repeat(64) }];
const base = notebookOf([sumCell('readings', []), sumCell('b', ['readings']), sumCell('c', ['b'])], { data });

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');
const signed = { reason: 'Seen on site.', initials: 'KL', made_on: '2025-02-01' };
const row = { unit: 'B-07', taken_at: '2025-01-10', fire: 'high', state: 'as_found', fuel: '', nth: 1 };
const aside = (unit: string, more: object = {}): Edit => ({
  operation: 'correct',
  cell: 'readings',
  correction: { action: 'set_aside', row: { ...row, unit }, ...signed, ...more },
});

function editedBy(document: NotebookDocument, ...edits: readonly Edit[]): NotebookDocument {
  return edits.reduce((now, edit) => {
    const edited = applyEdit(now, edit, catalogue);
    return edited.status === 'value' ? edited.value : now;
  }, document);
}

function merged(first: NotebookDocument, second: NotebookDocument, resolve?: Parameters<typeof mergeDocuments>[2]) {
  const outcome = mergeDocuments(first, second, resolve);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const unitsCorrected = ({ cells }: NotebookDocument): string[] =>
  cells
    .flatMap(
      ({ parameters }) => (parameters.corrections as { row: { unit: string }; lifted: boolean }[] | undefined) ?? [],
    )
    .map((entry) => `${entry.row.unit}${entry.lifted ? ' lifted' : ''}`);

describe('two notebooks of one fleet', () => {
  test('corrections of both are in the result, each once', () => {
    const common = editedBy(base, aside('A-01'));
    const { document, conflicts } = merged(editedBy(common, aside('B-07')), editedBy(common, aside('C-03')));
    expect(conflicts).toEqual([]);
    expect(unitsCorrected(document).sort()).toEqual(['A-01', 'B-07', 'C-03']);
    expect(document.cells.filter(({ kind }) => kind === 'corrections')).toHaveLength(1);
  });

  test('nine tablets come back into one notebook', () => {
    const tablets = Array.from({ length: 9 }, (_, at) => editedBy(base, aside(`U-${at}`), aside('all')));
    const document = tablets.reduce((all, tablet) => merged(all, tablet).document);
    expect(unitsCorrected(document).sort()).toEqual([
      'U-0',
      'U-1',
      'U-2',
      'U-3',
      'U-4',
      'U-5',
      'U-6',
      'U-7',
      'U-8',
      'all',
    ]);
  });

  test('outcomes and other lists with identities are united, the later day is looked from, new files come along', () => {
    const more = { key: 's.csv', name: 's.csv', size: 5, hash: 'd'.repeat(64) };
    const first = { ...base, outcomes: [{ id: 'v1', unit: 'B-07', found: 'inside' }], as_of: '2026-05-01' };
    const second = { ...base, outcomes: [{ id: 'v2', unit: 'B-08', found: 'outside' }], data: [...data, more] };
    const { document, conflicts } = merged(first, second);
    expect(conflicts).toEqual([]);
    expect(document).toMatchObject({
      as_of: '2026-05-01',
      data: [data[0], more],
      outcomes: [{ id: 'v1' }, { id: 'v2' }],
    });
  });

  test('events noted on several tablets come together by unit, day and event', () => {
    const happened = (...entries: readonly object[]): NotebookDocument =>
      notebookOf([...base.cells, { name: 'events', kind: 'events', parameters: { entries } }], { data });
    const [valve, cleaned, other] = [
      { unit: 'B-07', on: '2024-06-03', event: 'gas_valve', note: 'stuck' },
      { unit: 'B-08', on: '2024-05-11', event: 'cleaned', note: '' },
      { unit: 'b 07', on: '2024-06-03', event: 'gas_valve', note: 'stuck' },
    ];
    const { document, conflicts } = merged(happened(valve), happened(cleaned, { ...other, unit: 'B-07' }));
    expect(conflicts).toEqual([]);
    const noted = ({ cells }: NotebookDocument): string[] =>
      cells
        .filter(({ kind }) => kind === 'events')
        .flatMap(({ parameters }) => parameters.entries as { unit: string; on: string }[])
        .map(({ unit, on }) => `${unit} ${on}`);
    expect(noted(document)).toEqual(['B-08 2024-05-11', 'B-07 2024-06-03']);
    expect(canonicalJson(merged(happened(cleaned, valve), happened(valve)).document)).toBe(canonicalJson(document));
    // Another note for the same event is a real contradiction.
    expect(merged(happened(valve), happened({ ...valve, note: 'renewed' })).conflicts).toHaveLength(1);
  });

  test('a table carried along to which both added lines holds those of both; one that was altered is asked for', () => {
    const head = 'unit,on,event,note\nB-07,2023-01-01,cleaned,\n';
    const carrying = (text: string): NotebookDocument =>
      notebookOf(base.cells, {
        data: [...data, { key: 'events.csv', name: 'events.csv', size: text.length, hash: hashOf(text), text }],
      });
    const [mine, theirs] = [
      carrying(`${head}B-08,2024-01-01,cleaned,\n`),
      carrying(`${head}A-01,2024-02-01,gas valve,\n`),
    ];
    const { document, conflicts } = merged(mine, theirs);
    expect(conflicts).toEqual([]);
    const text = document.data.find(({ key }) => key === 'events.csv')?.text ?? '';
    expect(text).toBe(`${head}A-01,2024-02-01,gas valve,\nB-08,2024-01-01,cleaned,\n`);
    expect(document.data.find(({ key }) => key === 'events.csv')).toMatchObject({
      size: text.length,
      hash: hashOf(text),
    });
    expect(canonicalJson(merged(theirs, mine).document)).toBe(canonicalJson(document));
    expect(canonicalJson(merged(document, mine).document)).toBe(canonicalJson(document));
    const altered = carrying(head.replace('unit,on', 'boiler,on'));
    expect(merged(mine, altered).conflicts.length).toBeGreaterThan(0);
  });

  test('a parameter that both changed is asked for, and nothing of it is dropped', () => {
    const first = editedBy(base, { operation: 'set-parameter', cell: 'b', parameter: 'add', value: 2 });
    const second = editedBy(base, { operation: 'set-parameter', cell: 'b', parameter: 'add', value: 1 });
    expect(merged(first, second).conflicts).toEqual([{ place: 'cell b.parameters.add', values: [1, 2] }]);
    const kept = merged(first, second, () => 'first');
    expect(kept.conflicts).toEqual([]);
    expect(kept.document.cells[1].parameters.add).toBe(2);
  });

  test('one reading put right in two ways is asked for; the other way stays, lifted off', () => {
    const change = (value: string, initials: string): Edit => ({
      operation: 'correct',
      cell: 'readings',
      correction: { action: 'change', row, column: 'o2_pct', value, ...signed, initials },
    });
    const [first, second] = [editedBy(base, change('5', 'KL')), editedBy(base, change('6', 'MN'))];
    expect(merged(first, second).conflicts).toHaveLength(1);
    const { document } = merged(first, second, () => 'second');
    const list = document.cells.find(({ kind }) => kind === 'corrections')?.parameters.corrections as {
      value: string;
      lifted: boolean;
    }[];
    expect(list.map(({ value, lifted }) => [value, lifted]).sort()).toEqual([
      ['5', true],
      ['6', false],
    ]);
  });

  test('of one day, what was decided later about a reading counts in both orders; the later turn stays', () => {
    const common = editedBy(base, aside('A-01'));
    const restored = editedBy(common, aside('A-01', { action: 'restore' }));
    const again = editedBy(restored, aside('A-01'));
    const turnsOf = (one: NotebookDocument, other: NotebookDocument) => {
      const { document, conflicts } = merged(one, other);
      expect(conflicts).toEqual([]);
      const list = document.cells.find(({ kind }) => kind === 'corrections')?.parameters.corrections;
      return (list as { action: string; turn: number }[]).map(({ action, turn }) => `${action} ${turn}`).sort();
    };
    for (const other of [common, restored, again]) {
      expect(turnsOf(again, other)).toEqual(['restore 2', 'set_aside 3']);
      expect(turnsOf(other, again)).toEqual(['restore 2', 'set_aside 3']);
    }
    expect(turnsOf(common, restored)).toEqual(['restore 2', 'set_aside 1']);
  });

  test('one lifted here and left there is asked for', () => {
    const first = editedBy(base, aside('A-01'));
    const layer = first.cells.find(({ kind }) => kind === 'corrections');
    const [{ id }] = (layer?.parameters.corrections ?? []) as { id: string }[];
    const second = editedBy(first, { operation: 'lift-correction', cell: 'corrections', id, lifted: true });
    expect(merged(first, second).conflicts[0].values).toEqual([false, true]);
  });

  test('two different fleets are refused', () => {
    const other = { ...base, title: 'Elsewhere', data: [{ ...data[0], hash: 'e'.repeat(64) }] };
    expect(mergeDocuments(base, other)).toMatchObject({
      status: 'error',
      message: expect.stringMatching(/"A test".*"Elsewhere".*different fleets/),
    });
  });
});

const names = fc.constantFrom('readings', 'b', 'c', 'd', 'e');
const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc
    .constantFrom('A-01', 'B-07', 'C-03', 'D-11')
    .chain((unit) => fc.constantFrom('2025-02-01', '2025-03-01').map((made_on) => aside(unit, { made_on }))),
  fc.constantFrom('A-01', 'B-07').map((unit) => aside(unit, { action: 'restore' })),
  fc.record({
    operation: fc.constant('set-parameter' as const),
    cell: names,
    parameter: fc.constantFrom('add', 'band'),
    value: fc.integer({ min: 1, max: 3 }),
  }),
  fc.record({ operation: fc.constant('add-cell' as const), name: names, kind: fc.constant('sum'), at: fc.nat(5) }),
  fc.record({ operation: fc.constant('remove-cell' as const), cell: names }),
  fc.record({ operation: fc.constant('move-cell' as const), cell: names, to: fc.nat(5) }),
  fc.record({ operation: fc.constant('set-title' as const), title: fc.constantFrom('X', 'Y') }),
);
const edits = fc.array(anyEdit, { maxLength: 12 });

describe('on random edits of one notebook', () => {
  test('merging is commutative, idempotent, and takes in what it took in once', () => {
    fc.assert(
      fc.property(edits, edits, edits, (common, mine, theirs) => {
        const start = editedBy(base, ...common);
        const [first, second] = [editedBy(start, ...mine), editedBy(start, ...theirs)];
        const one = merged(first, second);
        const other = merged(second, first);
        expect(canonicalJson(other.document)).toBe(canonicalJson(one.document));
        expect(other.conflicts).toEqual(one.conflicts);
        expect(canonicalJson(merged(first, first).document)).toBe(canonicalJson(first));
        if (one.conflicts.length > 0) return;
        expect(canonicalJson(merged(one.document, second).document)).toBe(canonicalJson(one.document));
        expect(canonicalJson(merged(one.document, first).document)).toBe(canonicalJson(one.document));
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  test('every correction of either side is in the result', () => {
    fc.assert(
      fc.property(edits, edits, (mine, theirs) => {
        const [first, second] = [editedBy(base, ...mine), editedBy(base, ...theirs)];
        const units = new Set(unitsCorrected(merged(first, second).document));
        for (const unit of [...unitsCorrected(first), ...unitsCorrected(second)]) expect(units).toContain(unit);
      }),
      { numRuns: 100, seed: 6 },
    );
  });
});

describe('one order of two', () => {
  test.each<[string, string, string | undefined]>([
    ['abc', 'abc', 'abc'],
    ['abc', 'axc', 'abxc'],
    ['ab', 'cd', 'abcd'],
    ['abz', 'xbz', 'axbz'],
    ['ab', 'ba', undefined],
  ])('%s and %s', (first, second, order) => {
    expect(mergeOrder([...first], [...second])?.join('')).toBe(order);
    expect(mergeOrder([...second], [...first])?.join('')).toBe(order);
  });
});
