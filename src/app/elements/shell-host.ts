import type { CellName } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import { notAmongMissing } from '../../../shared/messages/data-at-hand.ts';
import { localDay } from '../../../shared/quantities/local-day.ts';
import type { StripHost } from '../cell-view.ts';
import type { PageSession } from '../page-session.ts';
import type { DataCallsHost } from './data-calls.ts';

/** What the page does for its strips and for the calls at its top. */
export interface HostingPage {
  /** The open session. */
  need(): PageSession;
  states(): readonly CellState[];
  /** Makes a change, and says how much followed once everything is calculated. Gives back '' or why it was refused. */
  change(make: () => Promise<void>): Promise<string>;
  say(text: string): void;
  showTray(): void;
}

/** The page as its strips see it: every ask goes to the session, every change through the page. */
export function shellHost(page: HostingPage): StripHost & DataCallsHost {
  const { need, change } = page;
  return {
    rows: (cell, range) => need().rows(cell, range),
    lanes: (cell, units) => need().lanes(cell, units),
    working: (place) => need().working(place),
    setParameter: async (cell, parameter, value) => {
      await change(() => need().setParameter(cell, parameter, value));
    },
    correct: (cell, correction) => change(() => need().correct(cell, correction)),
    liftCorrection: (cell, id, lifted) => change(() => need().liftCorrection(cell, id, lifted)),
    readingKey: (cell, range, place, seen) => need().readingKey(cell, range, place, seen),
    words: (cell, table, column) => need().words(cell, table, column),
    today: () => localDay(new Date()),
    state: (cell) => page.states().find(({ name }) => name === cell),
    onChange: (listener) => need().onChange(listener),
    openFiles: () => page.showTray(),
    addFiles: (cell, parameter, files) => void change(() => addFiles(page, cell, parameter, files)),
    foundFile: (key, file) => void change(() => need().addFiles([{ key, name: file.name, blob: file }])),
    foundFiles: (files) => void foundFiles(page, files),
    acceptFile: (key) => void change(() => need().acceptFiles([key])),
  };
}

async function addFiles(
  { need, states }: HostingPage,
  cell: CellName,
  parameter: string,
  files: readonly File[],
): Promise<void> {
  const held = states().find(({ name }) => name === cell)?.parameters as Record<string, unknown> | undefined;
  const before = Array.isArray(held?.[parameter]) ? held[parameter].map(String) : [];
  await need().addFiles(files.map((file) => ({ key: file.name, name: file.name, blob: file })));
  await need().setParameter(cell, parameter, [...new Set([...before, ...files.map(({ name }) => name)])]);
}

/** Hands over what bears the name of a missing file, wherever the notebook keeps it. */
async function foundFiles({ need, change, say }: HostingPage, files: readonly File[]): Promise<void> {
  const { missing } = need().head;
  const keyOf = ({ name }: File): string | undefined => missing.find((key) => key === name || key.endsWith(`/${name}`));
  const known = files.flatMap((file) => {
    const key = keyOf(file);
    return key === undefined ? [] : [{ key, name: file.name, blob: file }];
  });
  if (known.length > 0) await change(() => need().addFiles(known));
  const stranger = files.find((file) => keyOf(file) === undefined);
  if (stranger) say(notAmongMissing(stranger.name, missing.join(', ')));
}
