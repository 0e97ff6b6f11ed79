import { describe, expect, test } from 'vitest';
import { compareRaised } from '../../../../shared/limits/compare-raised.ts';
import { raisedSchema } from '../../../../shared/schemas/raised.ts';
import { textColumn } from '../../../../shared/table/columns.ts';
import { tableOf } from '../../../../shared/table/schema.ts';
import { compareDocuments } from '../../../../src/notebook/compare/compare-documents.ts';
import { notebookOf, sumCell } from '../fixtures.ts';

describe('comparing two notebooks', () => {
  const before = notebookOf([sumCell('a', []), sumCell('b', ['a'], { add: 1 })]);

  test('names cells added and removed, and parameters with what they were and are', () => {
    const after = { ...notebookOf([sumCell('b', ['a'], { add: 2 }), sumCell('c', [])]), as_of: '2026-06-30' };
    expect(compareDocuments(before, after)).toEqual([
      'as_of was "2026-03-31", is "2026-06-30"',
      'cell removed: a (sum)',
      'b: add was "1", is "2"',
      'cell added: c (sum)',
    ]);
  });

  test('finds nothing between equals', () => {
    expect(compareDocuments(before, structuredClone(before))).toEqual([]);
  });
});

describe('comparing two lists of raised units', () => {
  const raised = (...rows: readonly [string, string, string][]) =>
    tableOf(
      raisedSchema,
      rows.length,
      new Map([
        ['unit', textColumn(rows.map(([unit]) => unit))],
        ['fire', textColumn(rows.map(([, fire]) => fire))],
        ['reason', textColumn(rows.map(([, , reason]) => reason))],
      ]),
    );

  test('says who is new, who is gone and who is raised otherwise', () => {
    const before = raised(
      ['A', 'high', 'co_high'],
      ['B', 'low', 'leaving_tolerance'],
      ['C', '', 'supply_drop_growing'],
    );
    const after = raised(['D', 'high', 'out_of_tolerance'], ['A', 'high', 'co_high'], ['B', 'low', 'out_of_tolerance']);
    expect(compareRaised(before, after)).toEqual([
      'newly raised: D (high: out of tolerance)',
      'no longer raised: C (supply drop growing)',
      'raised otherwise: B (was low: leaving tolerance, is low: out of tolerance)',
    ]);
    expect(compareRaised(before, before)).toEqual(['The same 3 units are raised for the same reasons.']);
  });
});
