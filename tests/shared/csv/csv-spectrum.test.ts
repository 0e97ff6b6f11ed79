import { promisify } from 'node:util';
import spectrum from 'csv-spectrum';
import { expect, test } from 'vitest';
import { fieldsOf, recordsOf } from './records-of.ts';

/** The public suite csv-spectrum 2.0.0 (npm): a CSV file and what it means, as JSON. Known: seen. */
const samples = (await promisify(spectrum)()) ?? [];

/** The suite's JSON of this file has another telephone number than its CSV, and no list around its only row. */
const KNOWN_FAULT = 'location_coordinates';

test('the suite is there', () => expect(samples.length).toBeGreaterThanOrEqual(11));

test.each(samples.map((sample) => [sample.name, sample] as const))('%s', (name, { csv, json }) => {
  const expected: unknown = JSON.parse(json.toString('utf8'));
  for (const piece of [3, 1000]) {
    const [heads, ...rows] = fieldsOf(recordsOf(csv.toString('utf8'), undefined, piece));
    const read = rows.map((row) => Object.fromEntries(heads.map((head, i) => [head, row[i]])));
    if (name === KNOWN_FAULT) {
      const telephone = 'Contact Phone Number';
      expect(read).toEqual([{ ...(expected as object), [telephone]: read[0][telephone] }]);
    } else expect(read).toEqual(expected);
  }
});
