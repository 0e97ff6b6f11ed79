import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellState } from '../../../shared/cell-state.ts';
import { gone as keptGone, opening as openingKept } from '../../../shared/messages/keeping.ts';
import {
  calculationStopped,
  changeFollowed,
  nothingOpen,
  nothingToSave,
  openFailed,
  openingOwn,
  openingSample,
  pageTitle,
  sampleBanner,
  savedFiles,
  skipToRaised,
  stopped,
} from '../../../shared/messages/page.ts';
import type { KeptContent, KeptNotebook } from '../../storage/kept-store.ts';
import type { StripViews } from '../cell-view.ts';
import { Keeping } from '../keeping/keeping.ts';
import { type Light, nextLight, readLight, showLight } from '../light.ts';
import type { OwnFile, PageSession } from '../page-session.ts';
import { cautions } from './cautions.ts';
import './cell-strip.ts';
import { FileDrops } from './file-drops.ts';
import './flow-line.ts';
import './kept-offers.ts';
import type { KeptChosen } from './kept-offers.ts';
import { LightElement } from './light-element.ts';
import './own-files.ts';
import { plateFigures } from '../plate-figures.ts';
import { pageCalls } from './page-calls.ts';
import './rating-plate.ts';
import { Saying } from './saying.ts';
import { shellHost } from './shell-host.ts';
import './two-notebooks.ts';
import { notebookFile, saveFile } from '../files/save-file.ts';

/** How the page comes to its notebooks; main.ts brings the real one. */
export interface NotebookOpener {
  sample(): Promise<PageSession>;
  own(files: readonly OwnFile[]): Promise<PageSession>;
  kept(kept: KeptNotebook, content: KeptContent): Promise<PageSession>;
}

/** The whole page: plate, flow at the side, the raised units first, then every cell as a strip. */
@customElement('bv-page')
export class PageShell extends LightElement {
  @property({ attribute: false }) views: StripViews = new Map();
  @property({ attribute: false }) opener: NotebookOpener | undefined;
  @state() private session: PageSession | undefined;
  @state() private cells: readonly CellState[] = [];
  @state() private isSample = true;
  @state() private failure = '';
  @state() private doing = '';
  /** What stands open above the strips. */
  @state() private panel: '' | 'files' | 'two' = '';
  @state() private light: Light = readLight();

  /** Openings begun so far. */
  private openings = 0;
  /** The one that is open: a strip of another notebook is another strip, though its cell be called the same. */
  private opened = 0;
  private stopListening: (() => void) | undefined;
  private names: ReadonlyMap<string, string> = new Map();
  private readonly keeping = new Keeping(this);
  private readonly saying = new Saying(this);
  protected readonly drops = new FileDrops(this, (files) => void this.showTray(files));
  private readonly host = shellHost({
    need: () => this.need(),
    states: () => this.cells,
    change: (make) => this.change(make),
    say: (text) => this.saying.say(text),
    showTray: () => void this.showTray(),
  });

  override connectedCallback(): void {
    super.connectedCallback();
    showLight(this.light);
    document.addEventListener('keydown', this.onKey);
    if (this.opener) void this.start();
  }

  /** Opens the sample campus, the first thing that anyone sees. */
  async start(): Promise<void> {
    const { opener } = this;
    if (!opener) return;
    this.doing = openingSample();
    await this.take(opener.sample(), true);
  }

  private async take(opening: Promise<PageSession>, isSample: boolean, kept?: KeptNotebook): Promise<boolean> {
    const turn = ++this.openings;
    try {
      const session = await opening;
      // What somebody opened meanwhile is not taken away by an opening that was begun before it.
      if (turn < this.opened) {
        session.close();
        return false;
      }
      this.opened = turn;
      this.stopListening?.();
      this.session?.close();
      this.stopListening = session.onChange(() => this.look());
      this.session = session;
      document.title = pageTitle(session.title);
      this.isSample = isSample;
      this.failure = '';
      this.keeping.begin(session, !isSample, kept);
      this.look();
      return true;
    } catch (cause) {
      if (turn > this.opened) this.failure = openFailed(cause instanceof Error ? cause.message : String(cause));
      return false;
    } finally {
      if (turn === this.openings) this.doing = '';
    }
  }

  private look(): void {
    const cells = this.session?.states() ?? [];
    if (cells.length !== this.cells.length || cells.some(({ name }, i) => name !== this.cells[i]?.name))
      this.names = new Map(cells.map(({ name, kind }) => [name, kind]));
    this.cells = cells;
    this.keeping.note();
    this.requestUpdate();
  }

  override render(): TemplateResult {
    const { session, cells } = this;
    const front = cells.filter(({ kind }) => kind === 'raise');
    const others = cells.filter(({ kind }) => kind !== 'raise');
    return html`<a class="skip" href="#main">${skipToRaised()}</a>
      <div class="frame" @bv-open=${() => this.showTray()} @bv-undo=${() => this.change(() => this.need().undo())}
        @bv-redo=${() => this.change(() => this.need().redo())} @bv-light=${this.onLight}
        @bv-save=${() => this.save('notebook')} @bv-files=${() => this.save('results')}
        @bv-as-of=${(event: CustomEvent<string>) => this.change(() => this.need().setAsOf(event.detail))}
        @bv-own-files=${(event: CustomEvent<readonly OwnFile[]>) => this.openOwn(event.detail)} @bv-close-tray=${() => this.show('')} @bv-close-two=${() => this.show('')}
        @bv-two=${() => this.show('two')} @bv-kept=${(event: KeptChosen) => this.onKept(event.detail)}>
        <bv-plate .title=${session?.title ?? ''} .asOf=${session?.asOf ?? ''} .figures=${plateFigures(cells)} ?canUndo=${session?.canUndo() ?? false}
          ?canRedo=${session?.canRedo() ?? false} .light=${this.light}></bv-plate>
        <div class="side">${
          cells.length === 0
            ? nothing
            : html`<bv-flow .cells=${cells} .views=${this.views} .busy=${session?.head.busy ?? false} .stopped=${session?.head.stopped ?? false}
          @bv-stop=${() => void this.need().stop()} @bv-go-on=${() => void this.change(() => this.need().goOn())}></bv-flow>`
        }</div>
        <main id="main" tabindex="-1">
          ${this.top()}
          ${session ? pageCalls(cells, session.head, this.host, this.views) : nothing}
          ${repeat(
            [...front, ...others],
            ({ name }) => `${this.opened} ${name}`,
            (cell) => this.strip(cell),
          )}
        </main>
        ${cautions()}
      </div>
      <p class="said" role="status">${this.saying.text}</p>`;
  }

  private top(): TemplateResult | typeof nothing {
    const { session, keeping } = this;
    const notKept =
      keeping.fault === '' || !session ? nothing : html`<p class="news fault" role="alert">${keeping.fault}</p>`;
    if (this.panel === 'files')
      return html`${notKept}<bv-own-files .missing=${session?.head.missing ?? []} .failure=${this.failure} .doing=${this.doing}></bv-own-files>`;
    if (this.panel === 'two' && session)
      return html`${notKept}<bv-two-notebooks .session=${session} .cells=${this.cells}></bv-two-notebooks>`;
    return html`${notKept}${this.isSample ? html`<bv-kept-offers .offers=${keeping.offers}></bv-kept-offers>` : nothing}${this.news()}`;
  }

  private news(): TemplateResult | typeof nothing {
    if (this.session && this.session.fault !== '')
      return html`<p class="news fault" role="alert">${stopped(this.session.fault)}</p>`;
    if (this.failure !== '') return html`<p class="news fault" role="alert">${this.failure}</p>`;
    if (this.doing !== '') return html`<p class="news" role="status">${this.doing}</p>`;
    if (this.session && this.cells.length === 0) return html`<p class="news">${nothingOpen()}</p>`;
    return this.session && this.isSample ? html`<p class="news sample">${sampleBanner()}</p>` : nothing;
  }

  private async show(panel: typeof this.panel): Promise<void> {
    this.panel = panel;
    this.failure = '';
    await this.updateComplete;
    this.querySelector('.tray')?.scrollIntoView({ block: 'nearest' });
  }

  private async onKept({ kept, act }: KeptChosen['detail']): Promise<void> {
    if (act === 'drop') return this.keeping.drop(kept);
    const content = await this.keeping.read(kept);
    if (!content || !this.opener) {
      this.failure = keptGone(kept.title);
      return this.keeping.look();
    }
    this.doing = openingKept(kept.title);
    await this.take(this.opener.kept(kept, content), false, kept);
  }

  private strip(cell: CellState): TemplateResult {
    return html`<bv-strip .cell=${cell} .host=${this.host} .views=${this.views} .names=${this.names} ?front=${cell.kind === 'raise'}></bv-strip>`;
  }

  private need(): PageSession {
    if (!this.session) throw new Error('the page is used before a notebook is open');
    return this.session;
  }

  /** Makes a change, and says how much followed once everything is calculated. Gives back '' or why it was refused. */
  private async change(make: () => Promise<void>): Promise<string> {
    const before = new Map(this.cells.map(({ name, version }) => [name, version]));
    let refusal = '';
    try {
      await make();
      await this.need().settled();
      if (this.need().head.stopped)
        this.saying.say(calculationStopped(this.cells.filter(({ stale, phase }) => stale || phase === 'idle').length));
      else
        this.saying.say(changeFollowed(this.cells.filter(({ name, version }) => before.get(name) !== version).length));
    } catch (cause) {
      refusal = cause instanceof Error ? cause.message : String(cause);
      this.saying.say(refusal);
    }
    return refusal;
  }

  private async showTray(files: readonly File[] = []): Promise<void> {
    this.panel = 'files';
    await this.updateComplete;
    const tray = this.querySelector('bv-own-files');
    await tray?.add(files);
    tray?.scrollIntoView({ block: 'nearest' });
    tray?.querySelector<HTMLElement>('input[type=file]')?.focus();
  }

  private async openOwn(files: readonly OwnFile[]): Promise<void> {
    if (!this.opener) return;
    const missing = this.session?.head.missing ?? [];
    if (files.every(({ file }) => missing.includes(file.name))) {
      this.panel = '';
      await this.change(() =>
        this.need().addFiles(files.map(({ file }) => ({ key: file.name, name: file.name, blob: file }))),
      );
      return;
    }
    this.failure = '';
    this.doing = openingOwn(files.length);
    if (await this.take(this.opener.own(files), false)) this.panel = '';
  }

  private async save(what: 'notebook' | 'results'): Promise<void> {
    const session = this.need();
    const files =
      what === 'results'
        ? await session.outputFiles()
        : [
            {
              name: notebookFile(session.title),
              blob: new Blob([await session.documentText()], { type: 'application/json' }),
            },
          ];
    for (const { name, blob } of files) saveFile(name, blob);
    this.saying.say(files.length === 0 ? nothingToSave() : savedFiles(files.length));
    if (what === 'notebook') await this.keeping.saved();
  }

  private onLight(): void {
    this.light = nextLight(this.light);
    showLight(this.light);
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    // A field inside an element of its own tree undoes what was typed there.
    const typing = (event.composedPath()[0] as HTMLElement | undefined)?.closest?.('input, textarea, select');
    if (typing || !(event.ctrlKey || event.metaKey) || event.altKey || !this.session) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    const forward = key === 'y' || event.shiftKey;
    void this.change(() => (forward ? this.need().redo() : this.need().undo()));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-page': PageShell;
  }
}
