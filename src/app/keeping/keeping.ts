import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { notKept } from '../../../shared/messages/keeping.ts';
import { type KeptContent, type KeptNotebook, KeptStore } from '../../storage/kept-store.ts';
import type { PageSession } from '../page-session.ts';
import { NotebookKeeper } from './notebook-keeper.ts';

/** Keeps the open notebook on behalf of the page, and knows what is kept from before. */
export class Keeping implements ReactiveController {
  /** Kept notebooks that are open in no tab, the latest first. */
  offers: readonly KeptNotebook[] = [];
  /** Why nothing is kept, in one sentence; '' where all is well. */
  fault = '';
  readonly #host: ReactiveControllerHost;
  readonly #keeper: NotebookKeeper;

  constructor(host: ReactiveControllerHost, store = new KeptStore()) {
    this.#host = host;
    this.#keeper = new NotebookKeeper(store, (cause) => this.#tell(cause === undefined ? '' : notKept(cause)));
    host.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('visibilitychange', this.#onHide);
    window.addEventListener('pagehide', this.#onHide);
    window.addEventListener('beforeunload', this.#onLeave);
    void this.look();
  }

  hostDisconnected(): void {
    document.removeEventListener('visibilitychange', this.#onHide);
    window.removeEventListener('pagehide', this.#onHide);
    window.removeEventListener('beforeunload', this.#onLeave);
  }

  async look(): Promise<void> {
    this.offers = await this.#keeper.offers();
    this.#host.requestUpdate();
  }

  begin(session: PageSession, isOwn: boolean, kept?: KeptNotebook): void {
    this.#keeper.begin(session, { isOwn, kept });
    void this.look();
  }

  note(): void {
    this.#keeper.note();
  }

  async saved(): Promise<void> {
    await this.#keeper.saved();
  }

  read(kept: KeptNotebook): Promise<KeptContent | undefined> {
    return this.#keeper.read(kept);
  }

  async drop(kept: KeptNotebook): Promise<void> {
    await this.#keeper.drop(kept);
    await this.look();
  }

  #tell(fault: string): void {
    if (fault === this.fault) return;
    this.fault = fault;
    this.#host.requestUpdate();
  }

  readonly #onHide = (): void => {
    if (document.visibilityState === 'hidden') void this.#keeper.flush();
  };

  /** Asks before the page is left while something is not kept. */
  readonly #onLeave = (event: BeforeUnloadEvent): void => {
    if (!this.#keeper.isBehind && this.fault === '') return;
    void this.#keeper.flush();
    event.preventDefault();
  };
}
