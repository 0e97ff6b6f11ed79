import type { RecordBatch } from '../csv/record-reader.ts';
import { HIGH_CO_PPM } from './high-co.ts';
import type { FilePlan } from './mapping.ts';
import { NumberReader, READ } from './read-number.ts';
import { dashedCo, maybeCoColumns } from './written-co.ts';

/** A column whose head was not understood and whose values would be dangerous if it were CO. */
export interface MaybeCo {
  readonly head: string;
  readonly rows: number;
  /** The first such value, as written, and its line. */
  readonly found: string;
  readonly line: number;
}

type Records = readonly (readonly string[])[];

/** Watches the rows of a file for what would hide a high CO: dashes in its place, and heads that nobody understood. */
export class CoWatch {
  /** Lines on which CO is dashes beside other values. */
  readonly dashes: number[] = [];
  readonly #maybe = new Map<string, MaybeCo>();

  get maybe(): readonly MaybeCo[] {
    return [...this.#maybe.values()];
  }

  /** Records of one plan, the first of which stands at place `from` of the batch; the refused ones are told elsewhere. */
  look(
    records: Records,
    plan: FilePlan,
    batch: RecordBatch,
    from: number,
    refused: { has(place: number): boolean },
  ): void {
    // Raw and air-free CO of one row are dashed together.
    for (const i of new Set(dashedCo(records, plan))) if (!refused.has(i)) this.dashes.push(batch.lineOf(from + i));
    for (const { index, head } of maybeCoColumns(plan)) {
      const reader = new NumberReader(plan.decimal, 'ppm');
      records.forEach((record, i) => {
        const value = reader.read(record[index]);
        const isHigh = reader.status === READ.overRange || value >= HIGH_CO_PPM;
        if (isHigh && !refused.has(i)) this.#note(head.trim(), record[index].trim(), batch.lineOf(from + i));
      });
    }
  }

  #note(head: string, found: string, line: number): void {
    const before = this.#maybe.get(head);
    this.#maybe.set(head, before ? { ...before, rows: before.rows + 1 } : { head, rows: 1, found, line });
  }
}
