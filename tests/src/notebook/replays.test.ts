import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { CellKind, SourceFile } from '../../../shared/cell.ts';
import { writeCsv } from '../../../shared/csv/write-csv.ts';
import { fail, succeed } from '../../../shared/outcome.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { replayName } from '../../../shared/replays.ts';
import { numberColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { campusReview } from '../../../src/notebook/campus-review.ts';
import type { CellEntry } from '../../../src/notebook/document.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { Session } from '../../../src/notebook/session.ts';
import { makeFleet } from '../../bench/fleet.ts';
import { notebookOf } from './fixtures.ts';

const numbers = (...values: number[]) => ({
  tables: { days: makeTable([['day', numberColumn('d', Float64Array.from(values))]]) },
});
const dayIn = (result: ReturnType<typeof numbers> | undefined): number => {
  const column = result?.tables.days.columns.get('day');
  return column?.kind === 'number' ? column.values[0] : Number.NaN;
};

/**
 * A kind that gives the day it looks from plus what it reads, and one that looks back at it.
 *
 *   first ── second ── look back: second (and first) as of 10 and 20 days ago
 */
function kindsOf(counts: Record<string, number>, replayed: readonly string[]): Map<string, CellKind> {
  const plain = {
    readParameters: (raw: unknown) => succeed({ reads: [], ...(raw as object) }),
    sources: () => [],
    sentence: () => ['.'],
  };
  const describe = () => ({ answer: '.', tables: [], figures: [], remarks: [] });
  const day: CellKind<{ reads: string[] }> = {
    ...plain,
    name: 'day',
    title: 'Day',
    purpose: 'Tells the day.',
    readParameters: (raw) => succeed({ reads: ((raw as { reads?: string[] })?.reads ?? []) as string[] }),
    reads: ({ reads }) => reads.map((cell) => ({ cell })),
    async compute({ reads }, inputs, { asOf }) {
      counts[`${reads.length} ${asOf}`] = (counts[`${reads.length} ${asOf}`] ?? 0) + 1;
      return succeed(
        numbers(asOf + [...inputs.values()].reduce((sum, input) => sum + 1000 * dayIn(input as never), 0)),
      );
    },
    describe,
  };
  const back: CellKind<object> = {
    ...plain,
    name: 'back',
    title: 'Look back',
    purpose: 'Looks back.',
    readParameters: () => succeed({}),
    reads: () => [{ cell: 'second' }],
    replays: (_, asOf) => ({ cells: replayed, days: [asOf - 10, asOf - 20] }),
    async compute(_, inputs, { asOf }) {
      const of = (name: string) => dayIn(inputs.get(name) as never);
      return succeed(numbers(of('second'), of(replayName('second', asOf - 10)), of(replayName('second', asOf - 20))));
    },
    describe,
  };
  return new Map([
    ['day', day as CellKind],
    ['back', back as CellKind],
  ]);
}

const cells = [
  { name: 'first', kind: 'day', parameters: { reads: [] } },
  { name: 'second', kind: 'day', parameters: { reads: ['first'] } },
  { name: 'back', kind: 'back', parameters: {} },
];
const today = readIsoDate('2026-03-31');

async function lookedBack(replayed: readonly string[], counts: Record<string, number> = {}) {
  const session = new Session(kindsOf(counts, replayed));
  session.open(notebookOf(cells), new Map());
  await session.calculate();
  const column = session.result('back')?.tables.days.columns.get('day');
  return { session, values: column?.kind === 'number' ? [...column.values] : [] };
}

describe('looking back', () => {
  test('a replayed cell is calculated as of each day, over the present of what is not replayed', async () => {
    const { values } = await lookedBack(['second']);
    expect(values).toEqual([today + 1000 * today, today - 10 + 1000 * today, today - 20 + 1000 * today]);
  });

  test('cells replayed together are read as of the same day', async () => {
    const { values } = await lookedBack(['first', 'second']);
    expect(values).toEqual([1001 * today, 1001 * (today - 10), 1001 * (today - 20)]);
  });

  test('each is calculated once; undo of the day calculates nothing again', async () => {
    const counts: Record<string, number> = {};
    const { session } = await lookedBack(['first', 'second'], counts);
    expect(Object.keys(counts)).toHaveLength(6);
    expect(Math.max(...Object.values(counts))).toBe(1);
    const edit: Edit = { operation: 'set-as-of', asOf: '2026-03-21' };
    session.edit(edit);
    await session.calculate();
    // Ten days earlier the present is what was ten days ago before; only the day twenty days before that is new.
    expect(Object.keys(counts)).toHaveLength(8);
    session.undo();
    await session.calculate();
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(8);
  });

  test('a failing replay is waited for under the name of its cell', async () => {
    const session = new Session(kindsOf({}, ['gone']));
    session.open(notebookOf(cells), new Map());
    await session.calculate();
    expect(session.state('back')).toMatchObject({ phase: 'failed', message: expect.stringContaining('gone') });
    expect(session.state('back')?.reads).toEqual(['second', 'gone']);
  });
});

describe('drift as of a past day', () => {
  test('knows nothing of what was read later, hyperparameters included', async () => {
    const { readings: printed, register } = makeFleet(24 * 24, 11);
    // Whether an analyzer calculates its CO2 is told by all of its readings where the export does not say it.
    const readings = printed.replaceAll('\n', ',measured\n').replace(',measured', ',co2_from');
    const past = '2023-07-01';
    const back: CellKind = {
      ...(kindsOf({}, []).get('back') as CellKind),
      replays: () => ({ cells: ['drift'], days: [readIsoDate(past)] }),
      reads: () => [],
      compute: async (_, inputs) => {
        const result = inputs.get(replayName('drift', readIsoDate(past)));
        return result ? succeed({ tables: result.tables }) : fail('nothing was replayed');
      },
    };
    const kinds = new Map([...catalogue, ['back', back]]);
    const opened = async (asOf: string, text: string, more: readonly CellEntry[]): Promise<Session> => {
      const session = new Session(kinds);
      const request = { title: 'Fleet', data: [], readings: ['readings.csv'], register: ['register.csv'] };
      const document = campusReview({ ...request, asOf });
      // Checks look at the whole history, so that what they find of a reading may change with the years.
      const own = document.cells.flatMap((cell) =>
        ['register', 'readings', 'derive', 'drift'].includes(cell.name)
          ? [{ ...cell, parameters: { ...cell.parameters, readings: 'readings', events: '' } }]
          : [],
      );
      session.open(
        { ...document, cells: [...own, ...more] },
        new Map([textFile('readings.csv', text), textFile('register.csv', register)].map((file) => [file.name, file])),
      );
      await session.calculate();
      return session;
    };
    const session = await opened('2026-03-31', readings, [{ name: 'back', kind: 'back', parameters: {} }]);
    expect(session.state('back')).toMatchObject({ phase: 'done' });
    const early = readings
      .split('\n')
      .filter((line, at) => at === 0 || line === '' || (line.split(',')[1] as string) <= past);
    expect(early.length).toBeLessThan(readings.split('\n').length);
    const then = await opened(past, early.join('\n'), []);
    const csvOf = (of: Session, cell: string, table: string): string => {
      const found = of.result(cell)?.tables[table];
      return found ? [...writeCsv(found)].join('') : '';
    };
    for (const table of ['drift', 'points', 'path']) {
      expect(csvOf(session, 'back', table)).toBe(csvOf(then, 'drift', table));
      expect(csvOf(session, 'back', table)).not.toBe(csvOf(session, 'drift', table));
    }
  });
});

function textFile(name: string, text: string): SourceFile {
  const bytes = new TextEncoder().encode(text);
  return {
    name,
    size: bytes.length,
    hash: `${name} ${bytes.length}`,
    async *open() {
      yield bytes;
    },
  };
}
