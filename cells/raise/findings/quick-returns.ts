import { returnsQuickly } from '../../../shared/messages/raise-signs.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { power } from '../../../shared/quantities/elementary.ts';
import type { Fleet } from '../fleet.ts';
import type { Sign } from './sign.ts';

/** A return within this many days is the last visit's, by the trade's usual count. */
const SOON_DAYS = 30;
const LEAST_VISITS = 3;
const MATTERS_RETURNS = 2;
/** Callbacks that a fleet has by itself: 4 to 6 % of visits as trades report it (common practice, no source). */
const USUAL_RATE = 0.05;
/** A visit whose reason nobody wrote down may be one of them; where a whole fleet is read so often, its own rate says so. */
const UNPLANNED: readonly string[] = ['callback', 'repair', ''];

interface Returns {
  readonly unit: string;
  readonly visits: number;
  readonly soon: number;
  readonly lastDay: number;
  readonly readings: number;
}

/** Whether a unit calls its technician back soon after a visit more often than the fleet does: binomial, one-sided. */
export function quickReturns(fleet: Fleet, skip: (unit: string) => boolean): Sign[] {
  const units = returnsOf(fleet).filter(({ unit, visits }) => visits >= LEAST_VISITS && !skip(unit));
  const sum = (of: (entry: Returns) => number): number => units.reduce((total, entry) => total + of(entry), 0);
  const rate = Math.max(sum(({ soon }) => soon) / sum(({ visits }) => visits) || 0, USUAL_RATE);
  return units.map(({ unit, visits, soon, lastDay, readings }) => ({
    unit,
    fuel: '',
    fire: '',
    reason: 'returns_quickly',
    pValue: atLeast(soon, visits, rate),
    matters: soon >= MATTERS_RETURNS,
    evidence: returnsQuickly(soon, visits, SOON_DAYS, rate, writeDay(lastDay)),
    readingsUsed: readings,
  }));
}

/** Days of visits of each unit, and how many were followed soon by one that nobody had planned. */
function returnsOf({ readings }: Fleet): Returns[] {
  const reason = readings.text('visit_reason');
  const found: Returns[] = [];
  for (const [unit, rows] of readings.byUnit) {
    const unplanned = new Map<number, boolean>();
    for (const row of rows) {
      const day = Math.floor(readings.day[row]);
      unplanned.set(day, unplanned.get(day) || UNPLANNED.includes(reason(row)));
    }
    const days = [...unplanned.keys()].sort((a, b) => a - b);
    const soon = days.filter((day, i) => i > 0 && day - days[i - 1] <= SOON_DAYS && unplanned.get(day));
    found.push({
      unit,
      visits: days.length - 1,
      soon: soon.length,
      lastDay: soon.at(-1) ?? Number.NaN,
      readings: rows.length,
    });
  }
  return found;
}

/** P(X >= k) for X binomial. */
export function atLeast(k: number, n: number, p: number): number {
  let [term, below] = [power(1 - p, n), 0];
  for (let i = 0; i < k; i++) {
    below += term;
    term *= ((n - i) / (i + 1)) * (p / (1 - p));
  }
  return Math.min(Math.max(1 - below, 0), 1);
}
