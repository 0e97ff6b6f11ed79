import { expect, test } from 'vitest';
import { accepted, rowsOf } from './read-readings.ts';

test('dates whose order is plain stay as they are where another column writes the month first', async () => {
  const rows = Array.from(
    { length: 400 },
    (_, i) => `B-${i},2024-03-0${1 + (i % 9)}T10:15,high,as_found,4.6,28,${i === 0 ? '3/4/2024' : '3/14/2024'}`,
  );
  const result = await accepted(`unit,taken_at,fire,state,o2_pct,co_ppm,calibrated_on\n${rows.join('\n')}\n`);
  const read = rowsOf(result.tables['accepted']);
  expect(read).toHaveLength(400);
  const of = new Map(read.map((row) => [row['unit'], row]));
  for (let i = 0; i < 400; i++) expect(of.get(`B-${i}`)?.['taken_at']).toBe(`2024-03-0${1 + (i % 9)}T10:15`);
  expect(of.get('B-0')?.['calibrated_on']).toMatch(/^2024-03-04/);
});
