/** Shared columns of a unit, numbered as its steps first need them. */
export class UnitColumns {
  readonly list: number[] = [];
  readonly #places = new Map<number, number>();
  /** Place of a column, -1 where none of the unit's steps needed it. */
  find(column: number): number {
    return this.#places.get(column) ?? -1;
  }
  place(column: number): number {
    let place = this.#places.get(column);
    if (place === undefined) {
      place = this.list.length;
      this.list.push(column);
      this.#places.set(column, place);
    }
    return place;
  }
}
