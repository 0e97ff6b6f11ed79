import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Figure } from '../../shared/cell.ts';
import { pictureFailed, pictureUnderWay } from '../../shared/messages/page.ts';
import { pictureTheme } from './picture-theme.ts';

/** A large picture, drawn by Vega-Lite, which is loaded when the first picture comes near the screen. */
@customElement('bv-picture')
export class Picture extends LitElement {
  static override styles = css`
    figure {
      margin: 0;
    }
    figcaption {
      font-size: 0.88em;
      color: var(--ink-2);
      margin-top: 6px;
      max-width: 74ch;
    }
    .room {
      min-height: 120px;
      overflow-x: auto;
      background: var(--sheet);
      border-block: 2px solid var(--ink);
      padding: 12px;
    }
    .room svg {
      display: block;
      max-width: none;
    }
    @media print {
      .room svg {
        max-width: 100%;
        height: auto;
      }
    }
  `;

  @property({ attribute: false }) figure!: Figure;
  @state() private failure = '';
  @state() private drawn = false;

  private near: IntersectionObserver | undefined;
  private isNear = false;
  private finish: (() => void) | undefined;
  private readonly dark = globalThis.matchMedia?.('(prefers-color-scheme: dark)');
  private readonly redraw = (): void => void this.draw();

  override connectedCallback(): void {
    super.connectedCallback();
    this.dark?.addEventListener('change', this.redraw);
    document.addEventListener('bv-light', this.redraw);
    this.near = new IntersectionObserver(
      (entries) => {
        if (this.isNear || !entries.some((entry) => entry.isIntersecting)) return;
        this.isNear = true;
        void this.draw();
      },
      { rootMargin: '400px' },
    );
    this.near.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.dark?.removeEventListener('change', this.redraw);
    document.removeEventListener('bv-light', this.redraw);
    this.near?.disconnect();
    this.finish?.();
    this.finish = undefined;
    this.isNear = false;
  }

  override render(): TemplateResult {
    return html`<figure>
      <div class="room" role="img" aria-label=${this.figure.alternative}><div id="picture">${this.drawn ? '' : html`<p>${pictureUnderWay()}</p>`}</div></div>
      <figcaption>${this.failure || this.figure.alternative}</figcaption>
    </figure>`;
  }

  override updated(changed: PropertyValues): void {
    if (changed.has('figure') && this.isNear) void this.draw();
  }

  private async draw(): Promise<void> {
    if (!this.isNear) return;
    const { figure } = this;
    try {
      const { default: embed } = await import('vega-embed');
      if (!this.isConnected || figure !== this.figure) return;
      const host = document.createElement('div');
      const room = this.renderRoot.querySelector<HTMLElement>('#picture');
      if (!room) return;
      const width = Math.max(320, room.clientWidth - 8);
      const specification = fitted(figure.specification, width) as Parameters<typeof embed>[1];
      const done = await embed(host, specification, {
        ast: true,
        defaultStyle: false,
        actions: false,
        renderer: 'svg',
        tooltip: false,
        config: pictureTheme(getComputedStyle(this)),
      });
      this.finish?.();
      this.finish = () => done.finalize();
      this.drawn = true;
      this.failure = '';
      await this.updateComplete;
      room.replaceChildren(host);
    } catch (cause) {
      this.failure = pictureFailed(figure.title, cause instanceof Error ? cause.message : String(cause));
    }
  }
}

/** One plot takes the width of the page, its axes and legend included; facets and concatenations size themselves. */
function fitted(specification: Figure['specification'], width: number): Figure['specification'] {
  const single = 'mark' in specification || 'layer' in specification;
  const encoding = (specification['encoding'] ?? {}) as Record<string, unknown>;
  if (!single || ['row', 'column', 'facet'].some((channel) => channel in encoding)) return specification;
  return { width, autosize: { type: 'fit', contains: 'padding' }, ...specification };
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-picture': Picture;
  }
}
