import type { CellState } from '../../../shared/cell-state.ts';
import { phaseAsking, phaseFailed, phaseIdle, phaseRunning, phaseWaiting } from '../../../shared/messages/page.ts';

/** What a cell is at, in words; '' where it is simply finished. */
export function phaseWords({ phase, progress, waitsFor }: CellState): string {
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
