/** Per lane, its series in force: since the last change of hardware. */
export interface LaneSeries {
  readonly readings: Int32Array;
  readonly visits: Int32Array;
  /** From what one visit left to what another, on a later day, found of the same level: what a rate can be told by. */
  readonly intervals: Int32Array;
  /** Day of the first and of the last reading taken; NaN where there is none. */
  readonly from: Float64Array;
  readonly to: Float64Array;
}
