import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sirv from 'sirv';

export const ROOT = join(import.meta.dirname, '../../..');

/**
 * A folder of its own with the page as `npm run build` leaves it; built only where the sources are younger. A build that
 * somebody else begins meanwhile does not take the files away from under it.
 */
export function buildPage(): string {
  const { NODE_ENV: _, ...environment } = process.env;
  const done = spawnSync(process.execPath, [join(ROOT, 'src/cli/run.mjs'), 'build'], {
    cwd: ROOT,
    encoding: 'utf8',
    env: environment,
  });
  if (done.status !== 0) throw new Error(`the page was not built: ${done.stdout}${done.stderr}`);
  const folder = mkdtempSync(join(tmpdir(), 'between-visits-page-'));
  cpSync(join(ROOT, 'dist/app'), folder, { recursive: true });
  return folder;
}

/** A plain web server, as any is, with the page below a path of its own. */
export async function serveAt(folder: string, path: string): Promise<{ address: string; close(): void }> {
  const files = sirv(folder);
  const server: Server = createServer((request, response) => {
    const inside = request.url?.startsWith(path) ?? false;
    if (!inside) {
      response.statusCode = 404;
      response.end();
      return;
    }
    request.url = request.url?.slice(path.length - 1);
    files(request, response, () => {
      response.statusCode = 404;
      response.end();
    });
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${path}`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}

export function removePage(folder: string): void {
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
}
