import { expect, test } from 'vitest';
import type { CellState } from '../../../../shared/cell-state.ts';
import { flowSummary } from '../../../../shared/messages/page.ts';
import { phaseWords } from '../../../../src/app/flow/phase-words.ts';

const failed = { phase: 'failed', progress: 0, waitsFor: [] as readonly string[] } as CellState;

test('a cell whose kind nobody knows here is kept, and is no error', () => {
  expect(phaseWords(failed, false)).not.toMatch(/error|stopped|failed/);
  expect(phaseWords(failed, false)).toMatch(/kept .* not known here/);
  expect(phaseWords(failed, true)).toMatch(/error/);
});

test('the summary of the flow counts it neither as failed nor as finished', () => {
  const summary = flowSummary(2, 3, 0, 0, 0, 1);
  expect(summary).toMatch(/^2 of 3 cells finished, 1 .* not known here$/);
  expect(summary).not.toMatch(/failed/);
});
