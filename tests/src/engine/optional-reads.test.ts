import { expect, test } from 'vitest';
import { ask } from '../../../shared/outcome.ts';
import { CountedGraph, constant, failing, type Plan } from './counted-graph.ts';

/** The sum of what is there. */
const present: Plan['value'] = (...inputs) =>
  inputs.filter((input) => !Number.isNaN(input)).reduce((total, input) => total + input, 0);
const reader: Plan = { reads: ['needed', 'fit'], optional: ['fit'], key: 'reader', value: present };
const question = { message: 'Which?', remedy: 'Say.', parameter: 'p', options: [] };

const after = async (graph: CountedGraph, fit: Plan, more: Readonly<Record<string, Plan>> = {}) => {
  graph.define({ needed: constant(1), ...more, fit, reader });
  const counts = await graph.calculate();
  return { counts: counts['reader'] ?? 0, phase: graph.graph.state('reader')?.phase, value: graph.value('reader') };
};

test('a reader goes without an optional input that failed, and takes it in again when it comes back', async () => {
  const graph = new CountedGraph();
  expect(await after(graph, constant(10))).toEqual({ counts: 1, phase: 'done', value: 11 });
  // The value of before the failure is not used.
  expect(await after(graph, { value: failing('broken') })).toEqual({ counts: 1, phase: 'done', value: 1 });
  // Failing differently is the same absence.
  expect(await after(graph, { value: failing('otherwise') })).toEqual({ counts: 0, phase: 'done', value: 1 });
  // Both combinations have been seen before: nothing is calculated twice.
  expect(await after(graph, constant(10))).toEqual({ counts: 0, phase: 'done', value: 11 });
  expect(await after(graph, constant(20))).toEqual({ counts: 1, phase: 'done', value: 21 });
});

test('it goes without one that asks or that waits for another', async () => {
  const graph = new CountedGraph();
  const asking: Plan = { key: 'asks', value: () => ask(question) };
  expect(await after(graph, asking)).toEqual({ counts: 1, phase: 'done', value: 1 });
  const fit: Plan = { reads: ['root'], value: (x) => x };
  const waiting = await after(graph, fit, { root: { value: failing('no file') } });
  expect(waiting).toEqual({ counts: 0, phase: 'done', value: 1 });
  expect(graph.graph.state('fit')?.phase).toBe('waiting');
  expect(await after(graph, fit, { root: constant(5) })).toEqual({ counts: 1, phase: 'done', value: 6 });
});

test('an input that is needed is still waited for', async () => {
  const graph = new CountedGraph();
  graph.define({ needed: { value: failing('broken') }, fit: constant(10), reader });
  await graph.calculate();
  expect(graph.graph.state('reader')?.phase).toBe('waiting');
  expect(graph.graph.state('reader')?.waitsFor).toEqual(['needed']);
});
