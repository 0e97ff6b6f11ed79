import { canonicalJson } from '../canonical-json.ts';
import { ownField } from '../own-field.ts';
import type { Conflict, Resolve } from './conflict.ts';
import { mergeOrder } from './merge-order.ts';

type Fields = Readonly<Record<string, unknown>>;

/** Merges plain values and gathers what only the user can settle. */
export class ValueMerger {
  readonly conflicts: Conflict[] = [];
  readonly #resolve: Resolve;

  constructor(resolve: Resolve) {
    this.#resolve = resolve;
  }

  /** Lists of things with identities are united, objects merged field by field; anything else that differs is a conflict. */
  merge(place: string, first: unknown, second: unknown): unknown {
    if (first === undefined) return second;
    if (second === undefined || canonicalJson(first) === canonicalJson(second)) return first;
    if (isFields(first) && isFields(second)) return this.mergeFields(place, first, second);
    if (Array.isArray(first) && Array.isArray(second)) {
      if (everyText(first) && everyText(second)) return mergeTexts(first, second);
      const identity = identityOf([...first, ...second]);
      if (identity) return this.unite(place, first, second, identity);
    }
    return this.settle(place, first, second);
  }

  mergeFields(place: string, first: Fields, second: Fields): Fields {
    const names =
      mergeOrder(Object.keys(first), Object.keys(second)) ?? sortedUnion(Object.keys(first), Object.keys(second));
    return Object.fromEntries(
      names.map((name) => [name, this.merge(`${place}.${name}`, ownField(first, name), ownField(second, name))]),
    );
  }

  /** Both lists by identity, in the order of their dates, then of their identities. */
  unite(place: string, first: readonly Fields[], second: readonly Fields[], identity: string): Fields[] {
    const [one, other] = [first, second].map((list) => new Map(list.map((item) => [String(item[identity]), item])));
    const united = sortedUnion([...one.keys()], [...other.keys()]).map((name) =>
      this.merge(`${place}[${name}]`, one.get(name), other.get(name)),
    ) as Fields[];
    const dateOf = (item: Fields): string => String(item['made_on'] ?? item['on'] ?? '');
    return united.sort((a, b) => (dateOf(a) < dateOf(b) ? -1 : dateOf(a) > dateOf(b) ? 1 : 0));
  }

  /** What counts of two different things: as the user says, else for the time being the one that sorts first. */
  settle(place: string, first: unknown, second: unknown): unknown {
    const swapped = canonicalJson(first) > canonicalJson(second);
    const conflict: Conflict = { place, values: swapped ? [second, first] : [first, second] };
    const side = this.#resolve(conflict, first, second);
    if (side === undefined) this.conflicts.push(conflict);
    if (side === undefined) return conflict.values[0];
    return side === 'first' ? first : second;
  }
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const everyText = (list: readonly unknown[]): list is readonly string[] =>
  list.every((item) => typeof item === 'string');

function mergeTexts(first: readonly string[], second: readonly string[]): string[] {
  return mergeOrder(first, second) ?? sortedUnion(first, second);
}

const sortedUnion = (first: readonly string[], second: readonly string[]): string[] =>
  [...new Set([...first, ...second])].sort();

/** The field by which every item is told from the others, if there is one. */
function identityOf(items: readonly unknown[]): string | undefined {
  return ['id', 'key', 'name'].find((field) =>
    items.every((item) => isFields(item) && typeof item[field] === 'string'),
  );
}
