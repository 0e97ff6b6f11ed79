import type { Remark } from '../../shared/cell.ts';
import type { BandSource } from '../../shared/foresight/band-of-lane.ts';
import {
  asMeasuredRemark,
  bandFromClass,
  bandFromLeft,
  bandFromTarget,
  grossLeftOut,
  intervalsRemark,
  spreadDefaulted,
  spreadRemark,
  unchangedHardware,
  unknownLanes,
} from '../../shared/messages/foresight.ts';
import type { DriftResult } from './compute.ts';

/** Below this the fleet's own spread is not worth believing alone. */
const FEW_UNITS = 8;

/** Defaults used, what is unknown, and how far to trust the rest. */
export function remarksOf({ rows, fitted }: DriftResult): Remark[] {
  const remarks: Remark[] = [];
  const note = (text: string): number => remarks.push({ severity: 'note', text });
  const warn = (text: string): number => remarks.push({ severity: 'warning', text });
  const unknown = rows.filter(({ judged }) => judged.reason !== '');
  if (unknown.length > 0) warn(unknownLanes(unknown.length, unknown[0].judged.reason));
  const from = (source: BandSource): number => rows.filter(({ band }) => band.source === source).length;
  if (from('class_band') > 0) warn(bandFromClass(from('class_band')));
  if (from('as_left') > 0) warn(bandFromLeft(from('as_left')));
  if (from('target') > 0) note(bandFromTarget(from('target')));
  if (fitted.gross > 0) warn(grossLeftOut(fitted.gross));
  if (!fitted.referenceAir) warn(asMeasuredRemark());
  if (fitted.lanes.length > 0) {
    const { spread, unitsUsed } = fitted.estimate;
    const two = (value: number): string => value.toFixed(2);
    note(
      spreadRemark(
        unitsUsed,
        two(spread.reading),
        two(spread.visit),
        two(spread.wander),
        two(spread.rate),
        two(spread.analyzer),
      ),
    );
    if (unitsUsed < FEW_UNITS) warn(spreadDefaulted(unitsUsed));
    note(intervalsRemark());
  }
  note(unchangedHardware());
  return remarks;
}
