import { describe, expect, test } from 'vitest';
import { kind as note } from '../../../cells/note/kind.ts';
import { kind as readings } from '../../../cells/readings/kind.ts';
import type { CellKind } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import type { HandedFile, NotebookHead, TableCalls, TableReply, TableRequest } from '../../../src/app/protocol.ts';
import { TableHost } from '../../../src/app/table-host.ts';

const catalogue = new Map<string, CellKind>([
  ['note', note as CellKind],
  ['readings', readings as CellKind],
]);

/** A page that speaks the protocol with a host, without a worker between them. */
class Page {
  head: NotebookHead | undefined;
  readonly states = new Map<string, CellState>();
  readonly #host: TableHost;
  readonly #replies = new Map<number, TableReply>();
  #calls = 0;

  constructor() {
    this.#host = new TableHost(catalogue, (reply) => {
      if (reply.kind !== 'news') this.#replies.set(reply.id, reply);
      else {
        this.head = reply.head;
        for (const state of reply.states) this.states.set(state.name, state);
      }
    });
  }

  async ask<Name extends keyof TableCalls>(call: Name, ...given: Parameters<TableCalls[Name]>): Promise<unknown> {
    const id = ++this.#calls;
    await this.#host.receive({ id, call, arguments: given } as unknown as TableRequest);
    const reply = this.#replies.get(id);
    if (reply?.kind === 'answer') return reply.value;
    throw new Error(reply?.kind === 'refusal' ? reply.message : 'no reply');
  }
}

const file = (key: string, text: string): HandedFile => ({ key, name: key, blob: new Blob([text]) });
const CSV = 'unit,taken_at,fire,state,o2_pct\nB-07,2025-01-10,high,as_found,5\nB-08,2025-01-11,low,as_left,6\n';
const notebook = JSON.stringify({
  format: 'between-visits-notebook',
  version: 1,
  title: 'T',
  as_of: '2026-03-31',
  settings: {},
  data: [{ key: 'r.csv', name: 'data/r.csv', size: 1, hash: 'a'.repeat(64) }],
  cells: [
    { name: 'readings', kind: 'readings', parameters: { files: ['r.csv'], register: '' } },
    { name: 'memo', kind: 'note', parameters: { text: 'Seen.' } },
  ],
});

describe('the host of the tables', () => {
  test('opens, calculates and hands out rows, sorted and filtered', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    await page.ask('settled');
    expect(page.head).toMatchObject({
      title: 'T',
      asOf: '2026-03-31',
      order: ['readings', 'memo'],
      missing: [],
      busy: false,
    });
    expect(page.head?.changed).toEqual(['r.csv']);
    expect([...page.states.values()].map(({ phase }) => phase)).toEqual(['done', 'done']);
    const sorted = { table: 'accepted', from: 0, to: 1, sort: { column: 'o2_pct', descending: true } };
    expect(await page.ask('rows', 'readings', sorted)).toMatchObject({ total: 2, from: 0 });
    const filtered = { table: 'accepted', from: 0, to: 9, filter: { column: 'fire', text: 'high' } };
    expect(await page.ask('rows', 'readings', filtered)).toMatchObject({ total: 1 });
    await expect(page.ask('rows', 'readings', { table: 'gone', from: 0, to: 1 })).rejects.toThrow(
      /no table named "gone"/,
    );
  });

  test('a missing file is named until it is handed over; the notebook keeps where it lies', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, []);
    await page.ask('settled');
    expect(page.head?.missing).toEqual(['r.csv']);
    expect(page.states.get('readings')?.phase).toBe('failed');
    expect(page.states.get('memo')?.phase).toBe('done');
    await page.ask('addFiles', [file('r.csv', CSV)]);
    await page.ask('settled');
    expect(page.states.get('readings')?.phase).toBe('done');
    // It is not the file of the hash that was saved: read, and said, until the user takes it for good.
    expect(page.head).toMatchObject({ missing: [], changed: ['r.csv'], undoSteps: 0 });
    await page.ask('acceptFiles', ['r.csv']);
    expect(page.head).toMatchObject({ missing: [], changed: [], undoSteps: 1 });
    const { data } = JSON.parse((await page.ask('documentText')) as string) as { data: unknown[] };
    expect(data).toEqual([expect.objectContaining({ key: 'r.csv', name: 'data/r.csv', size: CSV.length })]);
    await page.ask('undo');
    expect(page.head).toMatchObject({ changed: ['r.csv'], undoSteps: 0 });
  });

  test('a file of its own name and content is taken without a word; a new one joins the list', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, []);
    await page.ask('addFiles', [file('s.csv', CSV)]);
    expect(page.head).toMatchObject({ missing: ['r.csv'], changed: [], undoSteps: 1 });
    const saved = (await page.ask('documentText')) as string;
    const again = new Page();
    await again.ask('openNotebook', 'n.json', saved, []);
    await again.ask('addFiles', [file('s.csv', CSV)]);
    expect(again.head).toMatchObject({ missing: ['r.csv'], changed: [], undoSteps: 0 });
  });

  test('edits, undo and redo; a refused one changes nothing and says why', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    const said = async (): Promise<unknown> => {
      await page.ask('settled');
      return page.states.get('memo')?.description?.answer;
    };
    await page.ask('edit', { operation: 'set-parameter', cell: 'memo', parameter: 'text', value: 'Again.' });
    expect(await said()).toBe('Again.');
    expect(page.head).toMatchObject({ undoSteps: 1, redoSteps: 0 });
    await page.ask('undo');
    expect(await said()).toBe('Seen.');
    await page.ask('redo');
    expect(await said()).toBe('Again.');
    const wrong = { operation: 'set-parameter', cell: 'memo', parameter: 'text', value: 7 } as const;
    await expect(page.ask('edit', wrong)).rejects.toThrow(/text/);
    await expect(page.ask('redo')).rejects.toThrow(/nothing/);
    expect(page.head).toMatchObject({ undoSteps: 1 });
  });

  test('a file that is no notebook is refused, and what was open stays open', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    await expect(page.ask('openNotebook', 'x.json', '{"rows": []}', [])).rejects.toThrow(/^x\.json is not a notebook/);
    expect(await page.ask('why', 'memo')).not.toBe('');
  });

  test('takes in another notebook of the fleet as one step, and asks where the two contradict each other', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    const other = notebook.replace(
      '"cells":[',
      '"cells":[{"name":"more","kind":"note","parameters":{"text":"More."}},',
    );
    expect(await page.ask('compare', 'm.json', other)).toMatchObject({
      decided: ['cell added: more (note)'],
      changes: undefined,
      fault: expect.stringContaining('could not be calculated with the data files at hand'),
    });
    expect(await page.ask('merge', 'm.json', other, {})).toEqual([]);
    expect(page.head).toMatchObject({ order: ['more', 'readings', 'memo'], undoSteps: 1 });
    expect(await page.ask('merge', 'm.json', other, {})).toEqual([]);
    expect(page.head).toMatchObject({ undoSteps: 1 });
    await page.ask('undo');
    const contrary = notebook.replace('Seen.', 'Not seen.').replace('"title":"T"', '"title":"S"');
    const [memo, title] = (await page.ask('merge', 'm.json', contrary, {})) as { place: string }[];
    expect([memo, title]).toEqual([
      { place: 'notebook.title', here: 'T', there: 'S' },
      { place: 'cell memo.parameters.text', here: 'Seen.', there: 'Not seen.' },
    ]);
    expect(page.head).toMatchObject({ undoSteps: 0 });
    expect(await page.ask('merge', 'm.json', contrary, { [title.place]: 'there' })).toEqual([memo]);
    expect(page.head).toMatchObject({ undoSteps: 0 });
    const answers = { [memo.place]: 'here', [title.place]: 'there' } as const;
    expect(await page.ask('merge', 'm.json', contrary, answers)).toEqual([]);
    await page.ask('settled');
    expect(page.head?.title).toBe('T');
    expect(page.states.get('memo')?.description?.answer).toBe('Not seen.');
  });

  test('hands out the files that the cells wrote, as the command line names them', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    const files = (await page.ask('outputFiles')) as { name: string; blob: Blob }[];
    expect(files.map(({ name }) => name)).toEqual(['accepted.csv', 'set-aside.csv', 'account.json', 'report.html']);
    expect(await files[0].blob.text()).toContain('B-07,2025-01-10');
  });

  test('a stopped calculation goes on when asked, or when files of what is up to date are wanted', async () => {
    const page = new Page();
    await page.ask('openNotebook', 'n.json', notebook, [file('r.csv', CSV)]);
    await page.ask('stop');
    await page.ask('settled');
    expect(page.head).toMatchObject({ busy: false, stopped: true });
    await page.ask('goOn');
    await page.ask('settled');
    expect(page.head).toMatchObject({ busy: false, stopped: false });
    expect(page.states.get('readings')?.phase).toBe('done');
    await page.ask('edit', { operation: 'set-as-of', asOf: '2026-04-01' });
    await page.ask('stop');
    const files = (await page.ask('outputFiles')) as { name: string }[];
    expect(files.map(({ name }) => name)).toContain('accepted.csv');
    expect(page.head).toMatchObject({ stopped: false });
  });
});
