import { catalogue } from '../../cells/catalogue.ts';
import type { TableRequest } from './protocol.ts';
import { TableHost } from './table-host.ts';

/** The worker that owns every table. It is loaded by URL as a module, so that its policy is its own and not the page's. */
const host = new TableHost(catalogue, (reply) => postMessage(reply));

addEventListener('message', ({ data }: MessageEvent<TableRequest>) => void host.receive(data));
