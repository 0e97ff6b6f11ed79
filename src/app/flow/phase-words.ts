import type { CellState } from '../../../shared/cell-state.ts';
import {
  phaseAsking,
  phaseFailed,
  phaseIdle,
  phaseRunning,
  phaseUnknown,
  phaseWaiting,
} from '../../../shared/messages/page.ts';

/** What a cell is at, in words; '' where it is simply finished. A kind that nobody knows here is no error. */
export function phaseWords({ phase, progress, waitsFor }: CellState, isKnown: boolean): string {
  if (!isKnown) return phaseUnknown();
  switch (phase) {
    case 'running':
      return phaseRunning(progress);
    case 'failed':
      return phaseFailed();
    case 'asking':
      return phaseAsking();
    case 'waiting':
      return phaseWaiting(waitsFor.join(', '));
    case 'idle':
      return phaseIdle();
    default:
      return '';
  }
}
