/** Shared columns of a unit, numbered as its steps first need them. */
export class UnitColumns {
  readonly list: number[] = [];
  readonly #places = new Map<number, number>();
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
