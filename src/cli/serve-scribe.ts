import type { MessagePort } from 'node:worker_threads';
import { writeCsv } from '../../shared/csv/write-csv.ts';
import type { Table } from '../../shared/table/table.ts';
import { writePieces } from './write-pieces.ts';

export interface ScribeOrder {
  readonly path: string;
  readonly table: Table;
}

export interface ScribeAnswer {
  readonly path: string;
  readonly fault?: string;
  readonly code?: string;
}

/** The thread's side: writes one table after the other, in the order in which they come. */
export function serveScribe(port: MessagePort): void {
  let before: Promise<void> = Promise.resolve();
  port.on('message', ({ path, table }: ScribeOrder) => {
    before = before
      .then(() => writePieces(path, writeCsv(table)))
      .then(
        () => port.postMessage({ path } satisfies ScribeAnswer),
        (cause: NodeJS.ErrnoException) =>
          port.postMessage({
            path,
            fault: cause.message,
            ...(cause.code && { code: cause.code }),
          } satisfies ScribeAnswer),
      );
  });
}
