import { expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import { makeSample } from '../../sample-data/make-sample.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { campusReview } from '../../src/notebook/campus-review.ts';
import { Session } from '../../src/notebook/session.ts';

const NAME = 'prints-spring-2024.txt';

/** What one printout says, read by eye: the text between its name and the end of its line. */
function field(block: string, name: string): string {
  const line = block.split('\r\n').find((each) => each.startsWith(name)) ?? '';
  return line.slice(line.indexOf(':') + 1).trim();
}

test('the printouts of spring 2024 come in whole: every block a reading, with its numbers', async () => {
  const bytes = makeSample().get(NAME) ?? new Uint8Array();
  const blocks = new TextDecoder('utf-16le')
    .decode(bytes)
    .split('\r\n\r\n')
    .filter((each) => each.includes('Test no.'));
  const session = new Session(catalogue);
  const open = async function* (): AsyncGenerator<Uint8Array> {
    yield bytes;
  };
  const data = [{ key: NAME, name: NAME, size: bytes.length, hash: '' }];
  const review = campusReview({ title: 'Prints', asOf: '2026-11-15', data, readings: [NAME], register: [] });
  const cells = review.cells
    .filter(({ name }) => name === 'readings')
    .map((cell) => ({ ...cell, parameters: { ...cell.parameters, register: '' } }));
  session.open({ ...review, cells }, new Map([[NAME, { name: NAME, size: bytes.length, hash: '', open }]]));
  await session.calculate();
  expect(session.state('readings')?.message).toBe('');
  const accepted = session.result('readings')?.tables.accepted;
  if (!accepted) throw new Error('no readings');
  const [unit, fire] = [textsOf(accepted, 'unit'), textsOf(accepted, 'fire')];
  const [o2, flue] = [numbersOf(accepted, 'o2_pct'), numbersOf(accepted, 'flue_C')];
  const came = Array.from(
    o2,
    (value, row) => `${textAt(unit, row)} ${textAt(fire, row)} ${value} ${Math.round(flue[row] * 1.8 + 32)}`,
  );
  const FIRES: Readonly<Record<string, string>> = { 'High fire': 'high', 'Low fire': 'low', 'Single stage': 'single' };
  const printed = blocks.map(
    (block) =>
      `${field(block, 'Unit')} ${FIRES[field(block, 'Fire')]} ${Number.parseFloat(field(block, 'Oxygen'))} ${Number.parseFloat(field(block, 'Flue temperature'))}`,
  );
  expect(came.toSorted()).toEqual(printed.toSorted());
}, 60_000);
