import type { Constant } from './mapping.ts';

type Said = Pick<Constant, 'field' | 'value'>;

/** What lines between the tables of a file say, until another one says otherwise. */
export class ToldBetween {
  readonly #said = new Map<string, string>();
  /** Fields that were named since the last reading. */
  readonly #lately = new Set<string>();

  constructor(constants: readonly Said[]) {
    for (const { field, value } of constants) this.#said.set(field, value);
  }

  get all(): ReadonlyMap<string, string> {
    return this.#said;
  }

  /** A reading stood here. */
  reading(): void {
    this.#lately.clear();
  }

  /** Takes what a line says. Another unit is read anew: what was said of the last one's fire and state does not hold. */
  take(line: readonly Said[]): readonly Said[] {
    const isOther = line.some(({ field, value }) => field === 'unit' && this.#said.get('unit') !== value);
    const over = isOther ? ['fire', 'state'].filter((field) => this.#said.has(field) && !this.#lately.has(field)) : [];
    const changes = [...over.map((field) => ({ field, value: '' })), ...line];
    for (const { field, value } of changes) this.#said.set(field, value);
    for (const { field } of line) this.#lately.add(field);
    return changes;
  }
}
