import { LitElement } from 'lit';
import { takeTurn } from './take-turns.ts';

/** An element that draws much: its updates wait for their turn, so that input comes in between. */
export class TurnElement extends LitElement {
  protected override scheduleUpdate(): Promise<unknown> | undefined {
    const go = (): Promise<unknown> | undefined => super.scheduleUpdate() ?? undefined;
    return takeTurn()?.then(go) ?? go();
  }
}
