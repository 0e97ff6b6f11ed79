import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** What is said stands long enough to be read twice. */
const STANDS_MS = 12_000;

/** One sentence that an element says for a while: what followed from a change, or why it was refused. */
export class Saying implements ReactiveController {
  /** '' while nothing is said. */
  text = '';
  readonly #host: ReactiveControllerHost;
  #hush: ReturnType<typeof setTimeout> | undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    clearTimeout(this.#hush);
  }

  say(text: string): void {
    this.#show(text);
    clearTimeout(this.#hush);
    this.#hush = setTimeout(() => this.#show(''), STANDS_MS);
  }

  #show(text: string): void {
    this.text = text;
    this.#host.requestUpdate();
  }
}
