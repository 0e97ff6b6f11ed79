/** How a unit id of the readings relates to the register. */
export interface UnitMatch {
  /** The register's spelling, or the reading's own where the register has no such unit. */
  readonly unit: string;
  readonly how: 'exact' | 'normalized' | 'none';
  /** Registered id that looks like it, for 'none'; '' where there is none, or more than one. */
  readonly nearest: string;
}

/**
 * Matches unit ids to the register's: exactly, else after normalizing case, spaces, dashes, leading zeros, O/0 and I/1.
 * Two registered ids with the same normal form are never chosen between. Near misses are named, never merged.
 */
export class UnitMatcher {
  readonly #exact: ReadonlySet<string>;
  /** Normal form -> registered id; '' where several share it. */
  readonly #normal = new Map<string, string>();
  /** Of each registered id that is alone with its normal form: the forms in which a near miss is looked for. */
  #forms: readonly (readonly [unit: string, normal: string, plain: string])[] | undefined;

  constructor(registered: Iterable<string>) {
    this.#exact = new Set(registered);
    for (const unit of this.#exact) {
      const key = normalUnit(unit);
      this.#normal.set(key, this.#normal.has(key) ? '' : unit);
    }
  }

  match(found: string): UnitMatch {
    if (this.#exact.has(found)) return { unit: found, how: 'exact', nearest: '' };
    const key = normalUnit(found);
    const registered = this.#normal.get(key);
    if (registered) return { unit: registered, how: 'normalized', nearest: '' };
    return { unit: found, how: 'none', nearest: this.#nearest(found) };
  }

  /** Leading zeros kept too: a letter mistaken for the digit before them makes them zeros within the number. */
  #nearest(found: string): string {
    this.#forms ??= [...this.#normal].flatMap(([normal, unit]) =>
      unit === '' ? [] : [[unit, normal, plainUnit(unit)] as const],
    );
    const [normal, plain] = [normalUnit(found), plainUnit(found)];
    const near = this.#forms.filter((form) => oneEditApart(normal, form[1]) || oneEditApart(plain, form[2]));
    return near.length === 1 ? near[0][0] : '';
  }
}

/**
 * The form in which two spellings of one id agree: 'b-07', 'B 7' and 'BO7' are all 'B7'. A dash between two digits stays,
 * since 1-11 and 11-1 are two units.
 */
export function normalUnit(unit: string): string {
  return withoutDashes(inOneWay(unit).replace(/(^|[^0-9])0+(?=[0-9])/g, '$1'));
}

/** The same with leading zeros kept. */
const plainUnit = (unit: string): string => withoutDashes(inOneWay(unit));

const inOneWay = (unit: string): string =>
  unit
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll('O', '0')
    .replaceAll('I', '1')
    .replace(/[\s\p{Pd}_./\\#]+/gu, '-');
const withoutDashes = (unit: string): string => unit.replace(/(?<![0-9])-|-(?![0-9])/g, '');

/** One character put in, left out, changed, or two neighbors swapped. */
function oneEditApart(a: string, b: string): boolean {
  if (a === b || Math.abs(a.length - b.length) > 1 || Math.min(a.length, b.length) < 2) return false;
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let end = 0;
  while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end)) end++;
  const [left, right] = [a.slice(start, a.length - end), b.slice(start, b.length - end)];
  if (left.length <= 1 && right.length <= 1) return true;
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
}
