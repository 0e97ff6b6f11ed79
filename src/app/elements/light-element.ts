import { LitElement } from 'lit';

/** An element of the page drawn in the page's own tree, so that one set of styles, labels and links serves them all. */
export class LightElement extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}
