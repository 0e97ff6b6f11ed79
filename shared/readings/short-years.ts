/** Older than this nobody looks back for (common practice, no source). */
const LONGEST_HISTORY_DAYS = 15 * 365.25;
/** Years of one file that lie further apart than this, with years missing between, are hardly years. */
const WIDEST_YEARS = 10;

/** So many different numbers in front, and this many times as many as at the end, are days unless they are a run. */
const LEAST_DAYS = 5;
const MORE_DAYS = 3;

/** What the dates with years of two digits in one file show of where the year stands. */
export class ShortYears {
  /** Dates that have one, and those of them that are a date with the year first only. */
  count = 0;
  onlyYearFirst = 0;
  /** Numeric dates of the file that cannot have the year first. */
  others = 0;
  /** The latest date with the day (or, where that is none, the month) first, and with the year first. */
  latest = Number.NEGATIVE_INFINITY;
  latestYearFirst = Number.NEGATIVE_INFINITY;
  earliestYearFirst = Number.POSITIVE_INFINITY;
  /** Dates with points, which have the day first wherever they are written. */
  withPoints = 0;
  readonly #first = new Uint8Array(100);
  readonly #last = new Uint8Array(100);

  see(first: number, last: number, usual: number, yearFirst: number, points: boolean): void {
    this.count++;
    if (points) this.withPoints++;
    if (Number.isNaN(yearFirst)) this.others++;
    else if (Number.isNaN(usual)) this.onlyYearFirst++;
    this.#first[first] = 1;
    this.#last[last] = 1;
    if (usual > this.latest) this.latest = usual;
    if (yearFirst > this.latestYearFirst) this.latestYearFirst = yearFirst;
    if (yearFirst < this.earliestYearFirst) this.earliestYearFirst = yearFirst;
  }

  /** Whether every date of the file can have the year first, and none of them then lies after the day `asOf`. */
  canStandFirst(asOf: number): boolean {
    return this.count > 0 && this.others === 0 && this.latestYearFirst < asOf + 1;
  }

  /** Whether they can, and no date of the file can be read otherwise as well as that one can. */
  mustStandFirst(asOf: number): boolean {
    return this.onlyYearFirst > 0 && this.canStandFirst(asOf);
  }

  /**
   * Whether they can and something says so: the other reading has dates to come or is older than anybody looks back for,
   * or there are fewer different numbers in front than at the end, as years are fewer than days. Where both readings are
   * of years that people look back over, only numbers in front that can hardly be years settle it.
   */
  pointFirst(asOf: number): boolean {
    if (!this.canStandFirst(asOf)) return false;
    if (this.latest >= asOf + 1) return true;
    const oldest = asOf - LONGEST_HISTORY_DAYS;
    if (this.latest < oldest && this.latestYearFirst >= oldest) return true;
    const [first, last] = [spanOf(this.#first), spanOf(this.#last)];
    const fewer = first.count < last.count || (first.count === last.count && first.width < last.width);
    if (fewer && !(lookLikeYears(last) && last.most > first.most)) return true;
    const isSettled = first.count >= Math.max(LEAST_DAYS, MORE_DAYS * last.count) && first.count !== first.width + 1;
    return this.withPoints === 0 && this.earliestYearFirst >= oldest && !isSettled;
  }

  /** Whether there are fewer different numbers at the end than in front: then the years stand there. */
  get pointLast(): boolean {
    return spanOf(this.#last).count < spanOf(this.#first).count;
  }
}

interface Span {
  readonly count: number;
  readonly width: number;
  readonly most: number;
}

function spanOf(seen: Uint8Array): Span {
  const [least, most] = [seen.indexOf(1), seen.lastIndexOf(1)];
  return { count: seen.reduce((sum, one) => sum + one, 0), width: most - least, most };
}

/** A visit on the same day of every year: what stands last is a run of years. */
const lookLikeYears = ({ count, width }: Span): boolean => width < WIDEST_YEARS || count === width + 1;
