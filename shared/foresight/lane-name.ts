/** What a lane is called: one fire of one unit on one fuel. */
export interface LaneName {
  readonly unit: string;
  readonly fuel: string;
  readonly fire: string;
}
