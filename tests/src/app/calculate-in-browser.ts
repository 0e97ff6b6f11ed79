import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { launchBrowser } from '../../browser/find-browser.ts';
import { serveAt } from './built-page.ts';

/**
 * Opens the notebook in the worker of the built page, in a real browser, and gives back the SHA-256 of every file that it
 * writes, by name. Data files come by name in base64.
 */
export async function calculateInBrowser(
  folder: string,
  notebook: string,
  files: Readonly<Record<string, string>>,
): Promise<Record<string, string>> {
  const worker = readdirSync(join(folder, 'assets')).find((name) => /^table-worker-.*\.js$/.test(name));
  const server = await serveAt(folder, '/');
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    // A page of the same origin that does not calculate the sample beside us.
    await page.goto(`${server.address}assets/${worker}`);
    return await page.evaluate(hashesOf, { worker: `${server.address}assets/${worker}`, notebook, files });
  } finally {
    await browser.close();
    server.close();
  }
}

interface Task {
  readonly worker: string;
  readonly notebook: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Runs in the browser; speaks the page's protocol with its worker. */
async function hashesOf({ worker: url, notebook, files }: Task): Promise<Record<string, string>> {
  const worker = new Worker(url, { type: 'module' });
  let calls = 0;
  const call = <T>(name: string, ...given: unknown[]): Promise<T> =>
    new Promise((resolve, reject) => {
      const id = ++calls;
      worker.addEventListener('message', ({ data }) => {
        if (data.id !== id) return;
        if (data.kind === 'answer') resolve(data.value);
        else reject(new Error(data.message));
      });
      worker.addEventListener('error', (event) => reject(new Error(event.message)));
      worker.postMessage({ id, call: name, arguments: given });
    });
  const handed = Object.entries(files).map(([name, text]) => ({
    key: name,
    name,
    blob: new Blob([Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))]),
  }));
  await call('openNotebook', 'notebook.json', notebook, handed);
  const written = await call<{ name: string; blob: Blob }[]>('outputFiles');
  const hashes: Record<string, string> = {};
  for (const { name, blob } of written) {
    const digest = await crypto.subtle.digest('SHA-256', await blob.arrayBuffer());
    hashes[name] = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
  }
  worker.terminate();
  return hashes;
}
