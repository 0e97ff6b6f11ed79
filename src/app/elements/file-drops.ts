import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { droppedFiles } from '../files/folder-files.ts';

/** Takes files and folders that are dropped anywhere on the page. */
export class FileDrops implements ReactiveController {
  readonly #take: (files: readonly File[]) => void;

  constructor(host: ReactiveControllerHost, take: (files: readonly File[]) => void) {
    this.#take = take;
    host.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('dragover', this.#onDrag);
    document.addEventListener('drop', this.#onDrop);
  }

  hostDisconnected(): void {
    document.removeEventListener('dragover', this.#onDrag);
    document.removeEventListener('drop', this.#onDrop);
  }

  readonly #onDrag = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  };

  readonly #onDrop = (event: DragEvent): void => {
    const { dataTransfer } = event;
    if (!dataTransfer || dataTransfer.files.length + dataTransfer.items.length === 0) return;
    event.preventDefault();
    void droppedFiles(dataTransfer).then((files) => {
      if (files.length > 0) this.#take(files);
    });
  };
}
