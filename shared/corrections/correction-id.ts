import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { CorrectionDone, CorrectionMade } from './correction.ts';

/** 64 bits of the SHA-256 of what the correction says; whether it is lifted and its turn do not count. */
export function correctionId(
  correction: CorrectionDone & Pick<CorrectionMade, 'reason' | 'initials' | 'made_on'>,
): string {
  const { action, reason, initials, made_on } = correction;
  const said = JSON.stringify([action, subjectOf(correction), reason, initials, made_on]);
  return bytesToHex(sha256(utf8ToBytes(said))).slice(0, 16);
}

function subjectOf(done: CorrectionDone): readonly unknown[] {
  switch (done.action) {
    case 'change':
      return [rowOf(done), done.column, done.value];
    case 'set_aside':
    case 'restore':
      return [rowOf(done)];
    case 'merge_units':
      return [done.from, done.to];
    case 'swap_units':
      return [[...done.units].sort(), done.visited_on];
  }
}

const rowOf = ({ row }: Extract<CorrectionDone, { row: unknown }>): readonly unknown[] => [
  row.unit,
  row.taken_at,
  row.fire,
  row.state,
  row.fuel,
  row.nth,
];
