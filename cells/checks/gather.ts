import * as say from '../../shared/messages/checks.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { textAt } from '../../shared/table/columns.ts';
import type { CheckRows } from './check-rows.ts';
import { CHECKS, type CheckName, type Severity } from './checks.ts';
import type { Finding, Repair, Report, Said } from './finding.ts';

const SEVERITIES: readonly Severity[] = ['impossible', 'suspect', 'note'];
/**
 * From so many rows on that one check says the same about, in one file and by one analyzer, they are one line of the list.
 * Impossible values and what can be repaired are always listed one by one.
 */
const LEAST_TOGETHER: Readonly<Record<Severity, number>> = {
  impossible: Number.POSITIVE_INFINITY,
  suspect: 10,
  note: 3,
};

interface Bundle extends Pick<Said, 'check' | 'columns'> {
  readonly gist: string;
  readonly rows: number[];
  /** Of the first rows, as many as may have to be listed one by one. */
  readonly sentences: string[];
  readonly repairs: (Repair | undefined)[];
}

/** Gathers what the rules say, bundled by check, file, analyzer and gist, so that an export with one fault is one line. */
export class Gatherer {
  readonly #rows: CheckRows;
  readonly #skip: ReadonlySet<string>;
  readonly #bundles = new Map<string, Bundle>();

  constructor(rows: CheckRows, skip: ReadonlySet<string>) {
    this.#rows = rows;
    this.#skip = skip;
  }

  readonly report: Report = ({ check, row, columns, sentence, gist = '', repair }) => {
    if (this.#skip.has(check)) return;
    const key = `${check}|${this.#origin(row)}|${gist}|${repair !== undefined}|${columns.join(' ')}`;
    const bundle = this.#bundles.get(key) ?? { check, columns, gist, rows: [], sentences: [], repairs: [] };
    this.#bundles.set(key, bundle);
    bundle.rows.push(row);
    if (repair === undefined && bundle.rows.length > LEAST_TOGETHER[CHECKS[check].severity]) return;
    bundle.sentences.push(sentence());
    bundle.repairs.push(repair?.());
  };

  /** The gravest first, then in the order of the readings. */
  findings(): Finding[] {
    const rank = (check: CheckName): number => SEVERITIES.indexOf(CHECKS[check].severity);
    return [...this.#bundles.values()]
      .flatMap((bundle) => this.#listed(bundle))
      .sort((a, b) => rank(a.check) - rank(b.check) || a.rows[0] - b.rows[0] || (a.check < b.check ? -1 : 1));
  }

  #origin(row: number): string {
    return `${this.#rows.text('source_file').codes[row]}|${this.#rows.text('analyzer').codes[row]}`;
  }

  #listed(bundle: Bundle): Finding[] {
    const { check, columns, rows, sentences, repairs } = bundle;
    const repairable = repairs.some((repair) => repair !== undefined);
    if (repairable || rows.length < LEAST_TOGETHER[CHECKS[check].severity])
      return rows.map((row, i) => ({ check, rows: [row], columns, sentence: sentences[i], repair: repairs[i] }));
    const sorted = [...rows].sort((a, b) => a - b);
    return [{ check, rows: sorted, columns, sentence: this.#together(bundle, sorted), repair: undefined }];
  }

  #together({ check, gist, sentences }: Bundle, rows: readonly number[]): string {
    const days = rows.map((row) => this.#rows.taken[row]);
    const [first, last] = days.reduce(([least, most], day) => [Math.min(least, day), Math.max(most, day)], [
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
    ] as [number, number]);
    return say.together(
      gist === '' ? CHECKS[check].title : gist,
      rows.length,
      textAt(this.#rows.text('analyzer'), rows[0]),
      textAt(this.#rows.text('source_file'), rows[0]),
      writeDay(first),
      writeDay(last),
      sentences[0],
    );
  }
}
