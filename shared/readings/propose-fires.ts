import * as say from '../messages/import.ts';
import { dayRuns, type Naming, namingOf, unitRuns } from './naming.ts';
import type { ReadingColumns } from './reading-columns.ts';

/** A measurement that is higher at high fire than at low fire, and by how much at least. Common practice, no source. */
interface Sign {
  readonly field: string;
  readonly title: string;
  readonly unit: string;
  isApart(low: number, high: number): boolean;
}

const SIGNS: readonly Sign[] = [
  { field: 'firing_rate_pct', title: 'firing rate', unit: '%', isApart: (low, high) => high - low >= 20 },
  { field: 'manifold', title: 'manifold pressure', unit: 'Pa', isApart: (low, high) => low > 0 && high / low >= 1.5 },
  {
    field: 'heat_input_clocked',
    title: 'heat input',
    unit: 'kW',
    isApart: (low, high) => low > 0 && high / low >= 1.25,
  },
  { field: 'flue', title: 'flue temperature', unit: '°C', isApart: (low, high) => high - low >= 15 },
];
/** A single reading is of the fire whose usual value it comes this near, as a share of the gap between the two. */
const NEAR_SHARE = 0.25;
/** Visits of one length in one order, and the share of them, before the order itself is evidence. */
const LEAST_IN_ORDER = 3;
const ORDER_SHARE = 0.8;

/**
 * Proposes fires for readings that name none: those of one visit part into two groups by firing rate, manifold pressure,
 * heat input or flue temperature; a lone one is compared with the unit's other visits; the order within a visit counts
 * where the unit's visits agree in it. Evidence that contradicts itself proposes nothing. `single` are units that the
 * register calls single-stage.
 */
export function proposeFires(columns: ReadingColumns, order: Int32Array, single: ReadonlySet<string>): Naming[] {
  const fire = columns.texts.get('fire');
  const isUnnamed = (row: number): boolean => {
    const text = fire?.text(row) ?? '';
    return text === '' || text === 'unnamed';
  };
  const namings: Naming[] = [];
  for (const [unit, all] of unitRuns(columns, order)) {
    const rows = Array.from(all).filter(isUnnamed);
    if (rows.length === 0) continue;
    if (single.has(unit) && rows.length === all.length) {
      const words = rows.map(() => 'single');
      namings.push(namingOf('fires', unit, rows, words, say.singleStage()));
    } else {
      const named = Array.from(all).filter((row) => !isUnnamed(row));
      const naming = new UnitFires(columns, unit, named).propose(rows);
      if (naming) namings.push(naming);
    }
  }
  return namings;
}

type Fire = 'high' | 'low';

class UnitFires {
  readonly #columns: ReadingColumns;
  readonly #unit: string;
  readonly #named: readonly number[];
  readonly #found = new Map<number, Fire>();

  constructor(columns: ReadingColumns, unit: string, named: readonly number[]) {
    this.#columns = columns;
    this.#unit = unit;
    this.#named = named;
  }

  propose(rows: readonly number[]): Naming | undefined {
    const visits = dayRuns(this.#columns, rows);
    for (const visit of visits) this.#part(visit);
    const usual = SIGNS.map((sign) => this.#usual(sign));
    for (const visit of visits) for (const row of visit) if (!this.#found.has(row)) this.#compare(row, usual);
    const inOrder = this.#byOrder(visits);
    if (this.#found.size === 0) return undefined;
    const known = rows.filter((row) => this.#found.has(row));
    const words = known.map((row) => this.#found.get(row) ?? 'unnamed');
    return namingOf('fires', this.#unit, known, words, this.#evidence(inOrder));
  }

  #value(sign: Sign, row: number): number {
    return this.#columns.numbers.get(sign.field)?.get(row) ?? Number.NaN;
  }

  /** Parts the readings of one visit in two by each sign; where two signs contradict each other, by none. */
  #part(visit: readonly number[]): void {
    const votes = SIGNS.flatMap((sign) => partedBy(sign, visit, (row) => this.#value(sign, row)) ?? []);
    if (votes.length === 0) return;
    const agreed = new Map<number, Fire>();
    for (const vote of votes)
      for (const [row, fire] of vote) {
        if ((agreed.get(row) ?? fire) !== fire) return;
        agreed.set(row, fire);
      }
    for (const [row, fire] of agreed) this.#found.set(row, fire);
  }

  /** Median of a sign at both fires, by what is named or found so far; NaN where the two are not apart. */
  #usual(sign: Sign): Readonly<Record<Fire, number>> {
    const fire = this.#columns.texts.get('fire');
    const of = (name: Fire): number =>
      middle(
        [
          ...this.#named.filter((row) => fire?.text(row) === name),
          ...[...this.#found].filter(([, found]) => found === name).map(([row]) => row),
        ].map((row) => this.#value(sign, row)),
      );
    const [high, low] = [of('high'), of('low')];
    return sign.isApart(low, high) ? { high, low } : { high: Number.NaN, low: Number.NaN };
  }

  #compare(row: number, usual: readonly Readonly<Record<Fire, number>>[]): void {
    const votes = new Set<Fire>();
    SIGNS.forEach((sign, i) => {
      const { high, low } = usual[i];
      const value = this.#value(sign, row);
      const reach = NEAR_SHARE * (high - low);
      if (value >= high - reach) votes.add('high');
      if (value <= low + reach) votes.add('low');
    });
    const [vote] = votes;
    if (votes.size === 1) this.#found.set(row, vote);
  }

  /** Names the readings of visits that nothing else parts, where nearly all others of that length came in one order. */
  #byOrder(visits: readonly (readonly number[])[]): number {
    const pattern = (visit: readonly number[]): string => visit.map((row) => (this.#found.get(row) ?? '?')[0]).join('');
    let named = 0;
    for (const length of new Set(visits.map((visit) => visit.length))) {
      const patterns = visits.filter((visit) => visit.length === length).map((visit) => pattern(visit));
      const whole = patterns.filter((text) => !text.includes('?'));
      const [usual = ''] = [...new Set(whole)].sort((a, b) => countOf(whole, b) - countOf(whole, a));
      if (countOf(whole, usual) < Math.max(LEAST_IN_ORDER, ORDER_SHARE * whole.length)) continue;
      for (const visit of visits)
        if (visit.length === length && /^\?+$/.test(pattern(visit)) && length > 1) {
          visit.forEach((row, i) => {
            this.#found.set(row, usual[i] === 'h' ? 'high' : 'low');
          });
          named += length;
        }
    }
    return named;
  }

  #evidence(inOrder: number): string {
    const found = [...this.#found];
    const told = SIGNS.flatMap((sign) => {
      const of = (name: Fire): number =>
        middle(found.filter(([, fire]) => fire === name).map(([row]) => this.#value(sign, row)));
      const [high, low] = [of('high'), of('low')];
      const usual = this.#usual(sign);
      if (sign.isApart(low, high)) return [say.fireSign(sign.title, whole(high), whole(low), sign.unit)];
      return sign.isApart(usual.low, usual.high)
        ? [say.fireSign(sign.title, whole(usual.high), whole(usual.low), sign.unit)]
        : [];
    });
    return say.fireEvidence(told, inOrder);
  }
}

/** Two groups of rows with a gap between them that is wide by the sign and wider than either group. */
function partedBy(sign: Sign, visit: readonly number[], value: (row: number) => number): Map<number, Fire> | undefined {
  const known = visit.filter((row) => !Number.isNaN(value(row))).sort((a, b) => value(a) - value(b));
  let at = 0;
  for (let i = 1; i < known.length; i++)
    if (at === 0 || value(known[i]) - value(known[i - 1]) > value(known[at]) - value(known[at - 1])) at = i;
  if (at === 0) return undefined;
  const spread = (from: number, to: number): number => value(known[to]) - value(known[from]);
  const gap = value(known[at]) - value(known[at - 1]);
  const isParted =
    sign.isApart(value(known[at - 1]), value(known[at])) &&
    gap > 1.5 * Math.max(spread(0, at - 1), spread(at, known.length - 1));
  return isParted ? new Map(known.map((row, i) => [row, i < at ? 'low' : 'high'])) : undefined;
}

function middle(values: readonly number[]): number {
  const known = values.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  return known.length === 0 ? Number.NaN : known[known.length >> 1];
}

const countOf = (list: readonly string[], text: string): number => list.filter((other) => other === text).length;
const whole = (value: number): string => String(Math.round(value));
