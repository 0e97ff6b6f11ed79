import type { FleetProgram } from './fleet-program.ts';

/** Typed columns of steps that grow as steps are written. */
export class StepList {
  length = 0;
  kind = new Uint8Array(1024);
  lane = new Uint8Array(1024);
  cell = new Uint8Array(1024);
  value = new Float64Array(1024);
  extra = new Float64Array(1024);
  biasColumn = new Int32Array(1024);
  offsetColumn = new Int32Array(1024);

  /** Writes a step and returns its place. */
  add(kind: number, lane: number, value = 0, extra = 0, cell = 0, biasColumn = -1, offsetColumn = -1): number {
    if (this.length === this.kind.length) this.#grow();
    const at = this.length++;
    this.kind[at] = kind;
    this.lane[at] = lane;
    this.value[at] = value;
    this.extra[at] = extra;
    this.cell[at] = cell;
    this.biasColumn[at] = biasColumn;
    this.offsetColumn[at] = offsetColumn;
    return at;
  }

  #grow(): void {
    this.kind = grown(this.kind, new Uint8Array(this.length * 2));
    this.lane = grown(this.lane, new Uint8Array(this.length * 2));
    this.cell = grown(this.cell, new Uint8Array(this.length * 2));
    this.value = grown(this.value, new Float64Array(this.length * 2));
    this.extra = grown(this.extra, new Float64Array(this.length * 2));
    this.biasColumn = grown(this.biasColumn, new Int32Array(this.length * 2));
    this.offsetColumn = grown(this.offsetColumn, new Int32Array(this.length * 2));
  }

  columns(): Pick<FleetProgram, 'kind' | 'lane' | 'cell' | 'value' | 'extra' | 'biasColumn' | 'offsetColumn'> {
    const { kind, lane, cell, value, extra, biasColumn, offsetColumn } = this;
    return { kind, lane, cell, value, extra, biasColumn, offsetColumn };
  }
}

function grown<A extends { set(from: A): void }>(from: A, to: A): A {
  to.set(from);
  return to;
}
