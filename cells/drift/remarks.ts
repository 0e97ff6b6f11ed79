import type { Remark } from '../../shared/cell.ts';
import type { BandSource } from '../../shared/foresight/band-of-lane.ts';
import type { AirVerdict } from '../../shared/foresight/compare-air.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import {
  airNotRead,
  airRemark,
  airSame,
  asMeasuredRemark,
  bandFromClass,
  bandFromLeft,
  bandFromTarget,
  gasRemark,
  gasSame,
  gasTooFew,
  grossLeftOut,
  intervalsRemark,
  lateDrifts,
  spreadDefaulted,
  spreadRemark,
  suddenLevels,
  unchangedHardware,
  unknownLanes,
} from '../../shared/messages/foresight.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { medianOf } from '../../shared/statistics/median-of.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { TextColumn } from '../../shared/table/table.ts';
import type { DriftResult } from './compute.ts';

/** Below this the fleet's own spread is not worth believing alone. */
const FEW_UNITS = 8;
const two = (value: number): string => value.toFixed(2);

/** Defaults used, what is unknown, and how far to trust the rest. */
export function remarksOf(result: DriftResult): Remark[] {
  const { told, fitted } = result;
  const remarks: Remark[] = [];
  const note = (text: string): number => remarks.push({ severity: 'note', text });
  const warn = (text: string): number => remarks.push({ severity: 'warning', text });
  if (told.unjudged > 0) warn(unknownLanes(told.unjudged, told.firstReason));
  const from = (source: BandSource): number => told.bandsFrom[source] ?? 0;
  if (from('class_band') > 0) warn(bandFromClass(from('class_band')));
  if (from('as_left') > 0) warn(bandFromLeft(from('as_left')));
  if (from('target') > 0) note(bandFromTarget(from('target')));
  if (told.airless > 0) warn(airNotRead(told.airless, two(told.airSdO2)));
  if (fitted.gross > 0) warn(grossLeftOut(fitted.gross));
  if (fitted.sudden > 0) warn(suddenLevels(fitted.sudden));
  const late = fitted.began.reduce((sum, day) => sum + Number(Number.isFinite(day)), 0);
  if (late > 0) note(lateDrifts(late));
  if (!fitted.referenceAir) warn(asMeasuredRemark());
  if (fitted.lanes.length > 0) note(airOf(result));
  if (fitted.lanes.length > 0) {
    const { spread, unitsUsed } = fitted.estimate;
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
    note(gasOf(result));
    note(intervalsRemark());
  }
  note(unchangedHardware());
  return remarks;
}

/** What reference air does to rates, visits and verdicts. */
function airOf({ tables, fitted }: DriftResult): string {
  const { other, estimate, referenceAir } = fitted;
  if (!other) return airSame();
  const { air } = tables;
  const [inReference, asMeasured] = ['verdict_reference_air', 'verdict_as_measured'].map((name) => textsOf(air, name));
  const told = Array.from(
    inReference.codes,
    (_, row) => [verdictAt(inReference, row), verdictAt(asMeasured, row)] as const,
  );
  const raised = (verdict: AirVerdict): boolean => verdict === 'outside' || verdict === 'leaving';
  const count = (test: (pair: (typeof told)[number]) => boolean): number => told.filter(test).length;
  const of = ({ states, estimate: { spread } }: Pick<FittedDrift, 'states' | 'estimate'>) => ({
    rate: two(medianOf([...states.rate].map(Math.abs))),
    visit: two(spread.visit),
  });
  const [here, there] = [of({ states: fitted.states, estimate }), of(other)];
  return airRemark(
    air.rows,
    other.lanes.length < fitted.lanes.length ? other.units : undefined,
    count(([reference, measured]) => reference !== measured),
    count(([reference, measured]) => raised(measured) && !raised(reference)),
    count(([reference, measured]) => raised(reference) && !raised(measured)),
    referenceAir ? here : there,
    referenceAir ? there : here,
  );
}

const verdictAt = (verdicts: TextColumn, row: number): AirVerdict => textAt(verdicts, row) as AirVerdict;

/** Whether the gas of a zone was found to differ from month to month. */
function gasOf({ tables, fitted }: DriftResult): string {
  const months = tables['gas-months'];
  if (fitted.gasMonths === 0) return gasTooFew();
  if (months.rows === 0) return gasSame(fitted.gasMonths);
  const [added, day, units] = ['o2_pct', 'month', 'units'].map((name) => numbersOf(months, name));
  const largest = added.reduce((most, value, row) => (Math.abs(value) > Math.abs(added[most]) ? row : most), 0);
  const signed = `${added[largest] > 0 ? '+' : ''}${two(added[largest])}`;
  const { zone } = fitted.estimate.spread;
  return gasRemark(months.rows, two(zone), signed, writeDay(day[largest]).slice(0, 7), units[largest]);
}
