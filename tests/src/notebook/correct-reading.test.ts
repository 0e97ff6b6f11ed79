import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { campusReview } from '../../../src/notebook/campus-review.ts';
import { Session } from '../../../src/notebook/session.ts';
import { hashBytes } from '../../../src/storage/hash-bytes.ts';

async function file(name: string, text: string): Promise<SourceFile> {
  const bytes = new TextEncoder().encode(text);
  const open = async function* () {
    yield bytes;
  };
  return { name, size: bytes.length, hash: await hashBytes(open()), open };
}

const READINGS = `unit,taken_at,fire,state,o2_pct,co_ppm
B-07,2025-01-10,high,as_found,5.1,900
B-08,2025-01-10,high,as_found,5.0,20
`;
const REGISTER = 'unit,fuel\nB-07,natural_gas\nB-08,natural_gas\n';
const signed = { reason: 'The probe stood in the next stack.', initials: 'KL', made_on: '2025-02-01' };
const row = { unit: 'B-07', taken_at: '2025-01-10', fire: 'high', state: 'as_found', fuel: '', nth: 1 };

async function opened() {
  const session = new Session(catalogue);
  const request = { title: 'T', asOf: '2025-03-31', data: [], readings: ['r.csv'], register: ['g.csv'] };
  session.open(
    campusReview(request),
    new Map([
      ['r.csv', await file('r.csv', READINGS)],
      ['g.csv', await file('g.csv', REGISTER)],
    ]),
  );
  await session.calculate();
  return session;
}

const raised = (session: Session): string[] => {
  const table = session.result('raise')?.tables.raised;
  return table ? Array.from({ length: table.rows }, (_, at) => textAt(textsOf(table, 'reason'), at)) : [];
};

describe('correcting a reading in a review', () => {
  test('puts a layer over the readings, which everybody then reads; undo takes it away again', async () => {
    const session = await opened();
    const before = session.document();
    expect(raised(session)).toContain('co_high');
    const edit = {
      operation: 'correct',
      cell: 'readings',
      correction: { action: 'set_aside', row, ...signed },
    } as const;
    expect(session.edit(edit).status).toBe('value');
    await session.calculate();
    expect(session.states().map(({ name, phase }) => [name, phase])).toEqual(
      session.document().cells.map(({ name }) => [name, 'done']),
    );
    expect(raised(session)).not.toContain('co_high');
    expect(session.result('derive')?.tables.derived.rows).toBe(1);
    expect(session.state('corrections')?.description?.answer).toMatch(/1 correction touches 1 reading/);
    session.undo();
    expect(session.document()).toBe(before);
    await session.calculate();
    expect(raised(session)).toContain('co_high');
  });

  test('a second one goes into the same layer; lifted off, the reading is back', async () => {
    const session = await opened();
    const change = { action: 'change', row, column: 'co_ppm', value: '90', ...signed };
    session.edit({ operation: 'correct', cell: 'readings', correction: change });
    session.edit({
      operation: 'correct',
      cell: 'corrections',
      correction: { ...change, column: 'o2_pct', value: '5.5' },
    });
    session.edit({ operation: 'correct', cell: 'readings', correction: change });
    const layers = session.document().cells.filter(({ kind }) => kind === 'corrections');
    expect(layers).toHaveLength(1);
    const list = layers[0].parameters.corrections as { id: string; column: string }[];
    expect(list.map(({ column }) => column)).toEqual(['o2_pct', 'co_ppm']);
    await session.calculate();
    const accepted = () =>
      session.result('corrections')?.tables.accepted as NonNullable<ReturnType<Session['result']>>['tables'][string];
    expect([numbersOf(accepted(), 'co_ppm')[0], numbersOf(accepted(), 'o2_pct')[0]]).toEqual([90, 5.5]);
    session.edit({ operation: 'lift-correction', cell: 'corrections', id: list[1].id, lifted: true });
    await session.calculate();
    expect(numbersOf(accepted(), 'co_ppm')[0]).toBe(900);
  });

  test('of one day the last word counts: set aside, restored, and set aside again', async () => {
    for (const made_on of ['2025-02-01', '2025-02-02', '2025-02-03', '2025-02-04', '2025-02-05', '2025-02-06']) {
      const session = await opened();
      const counted = async (action: string) => {
        session.edit({ operation: 'correct', cell: 'readings', correction: { action, row, ...signed, made_on } });
        await session.calculate();
        return session.result('corrections')?.tables.accepted.rows;
      };
      expect([await counted('set_aside'), await counted('restore'), await counted('set_aside')]).toEqual([1, 2, 1]);
      const [layer] = session.document().cells.filter(({ kind }) => kind === 'corrections');
      expect(layer.parameters.corrections).toMatchObject([
        { action: 'restore', turn: 2 },
        { action: 'set_aside', turn: 3 },
      ]);
    }
  });

  test('one without a reason is refused and changes nothing', async () => {
    const session = await opened();
    const before = session.document();
    const correction = { action: 'set_aside', row, initials: 'KL', made_on: '2025-02-01' };
    const refused = session.edit({ operation: 'correct', cell: 'readings', correction });
    expect(refused).toMatchObject({ status: 'error', message: expect.stringContaining('reason') });
    expect(session.document()).toBe(before);
  });
});
