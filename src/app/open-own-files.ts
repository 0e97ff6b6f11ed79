import { ownNotebook } from '../../shared/messages/page.ts';
import { localDay } from '../../shared/quantities/local-day.ts';
import { openSession } from './open-session.ts';
import type { OwnFile, PageSession } from './page-session.ts';
import type { HandedFile } from './protocol.ts';

/** A saved notebook with the data files that lie beside it; else a campus review over the files, looking from today. */
export async function openOwnFiles(files: readonly OwnFile[]): Promise<PageSession> {
  const notebook = files.find(({ role }) => role === 'notebook');
  const data = files.filter(({ role }) => role !== 'notebook');
  return notebook ? openNotebook(notebook.file, data) : openReview(data);
}

async function openNotebook(notebook: File, data: readonly OwnFile[]): Promise<PageSession> {
  const text = await notebook.text();
  return openSession((session) => session.openNotebook(notebook.name, text, handed(data, keysOf(text))));
}

/** The keys by which a notebook lists its files, by file name; none where its text cannot be read, which the session then says. */
function keysOf(text: string): ReadonlyMap<string, string> {
  try {
    const { data = [] } = JSON.parse(text) as { data?: readonly { key: string; name: string }[] };
    return new Map(data.map(({ key, name }) => [name, key]));
  } catch {
    return new Map();
  }
}

async function openReview(files: readonly OwnFile[]): Promise<PageSession> {
  const keys = (role: OwnFile['role']): string[] =>
    files.filter((file) => file.role === role).map(({ file }) => file.name);
  const request = {
    title: ownNotebook(),
    asOf: localDay(new Date()),
    readings: keys('readings'),
    register: keys('register'),
    events: keys('events'),
    fuelUse: keys('fuel-use'),
  };
  return openSession((session) => session.openReview(request, handed(files)));
}

const handed = (files: readonly OwnFile[], keys: ReadonlyMap<string, string> = new Map()): HandedFile[] =>
  files.map(({ file }) => ({ key: keys.get(file.name) ?? file.name, name: file.name, blob: file }));
