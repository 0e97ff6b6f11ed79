import notebook from '../../sample-data/campus-review.json?raw';
import { sampleMissing } from '../../shared/messages/page.ts';
import { openSession } from './open-session.ts';
import type { PageSession } from './page-session.ts';
import type { HandedFile } from './protocol.ts';

const urls = import.meta.glob<string>('../../sample-data/*.csv', {
  query: '?url&no-inline',
  import: 'default',
  eager: true,
});

/** The sample campus that is served beside the page. */
export async function openSample(): Promise<PageSession> {
  const { data } = JSON.parse(notebook) as { data: readonly { key: string; name: string }[] };
  const files = await Promise.all(data.map(({ key, name }) => fetchFile(key, name)));
  return openSession((session) => session.openNotebook('campus-review.json', notebook, files));
}

async function fetchFile(key: string, name: string): Promise<HandedFile> {
  const answer = await fetch(urls[`../../sample-data/${name}`]);
  if (!answer.ok) throw new Error(sampleMissing(name, answer.status));
  return { key, name, blob: await answer.blob() };
}
