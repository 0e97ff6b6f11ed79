import fc from 'fast-check';
import iconv from 'iconv-lite';
import { describe, expect, test } from 'vitest';
import { fileOf } from './file-of.ts';
import { readReadings, rowsOf } from './read-readings.ts';

/** A reading in canonical terms; numbers in tenths, so that any writing of them is exact. */
interface Made {
  readonly unit: string;
  readonly day: Date;
  readonly minute: number;
  readonly fire: 'high' | 'low';
  readonly state: 'as_found' | 'as_left';
  readonly o2: number;
  readonly co: number | '>4000' | '';
  readonly flue: number;
  readonly note: string;
}

const made: fc.Arbitrary<Made> = fc.record({
  unit: fc.constantFrom('B-01', 'B-02', 'HUT 3', 'K/7', '4711'),
  day: fc.date({ min: new Date('2012-01-01'), max: new Date('2026-06-01'), noInvalidDate: true }),
  minute: fc.integer({ min: 0, max: 1439 }),
  fire: fc.constantFrom('high', 'low'),
  state: fc.constantFrom('as_found', 'as_left'),
  o2: fc.integer({ min: 10, max: 150 }),
  co: fc.oneof(fc.integer({ min: 0, max: 3999 }), fc.constant('>4000' as const), fc.constant('' as const)),
  flue: fc.integer({ min: 300, max: 4000 }),
  note: fc
    .string({ unit: fc.constantFrom('a', 'ü', ' ', ',', ';', '"', '.', '5'), maxLength: 12 })
    .map((text) => text.trim()),
});

/** A way to write a table. */
interface Writing {
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly decimal: '.' | ',';
  readonly end: '\n' | '\r\n';
  readonly date: 'iso' | 'points' | 'day first' | 'month first' | 'serial';
  readonly language: keyof typeof LANGUAGES;
  readonly encoding: 'utf8' | 'utf8 mark' | 'utf16le' | 'win1252';
  readonly quoteAll: boolean;
  readonly dash: string;
  readonly order: readonly number[];
}

const LANGUAGES = {
  own: {
    heads: ['unit', 'taken_at', 'fire', 'state', 'o2_pct', 'co_ppm', 'flue_C', 'note'],
    words: { high: 'high', low: 'low', as_found: 'as_found', as_left: 'as_left' },
  },
  German: {
    heads: [
      'Kessel',
      'Datum',
      'Laststufe',
      'Zustand',
      'O2 [%]',
      'CO gemessen [ppm]',
      'Abgastemperatur [°C]',
      'Bemerkung',
    ],
    words: { high: 'Volllast', low: 'Kleinlast', as_found: 'vorher', as_left: 'nachher' },
  },
  French: {
    heads: ['Chaudière', 'Date', 'Allure', 'État', 'O2 (%)', 'CO mesuré (ppm)', 'Température fumées (°C)', 'Remarque'],
    words: { high: 'grande allure', low: 'petite allure', as_found: 'avant', as_left: 'après' },
  },
} as const;

const writing: fc.Arbitrary<Writing> = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  end: fc.constantFrom('\n', '\r\n'),
  date: fc.constantFrom('iso', 'points', 'day first', 'month first', 'serial'),
  language: fc.constantFrom('own', 'German', 'French'),
  encoding: fc.constantFrom('utf8', 'utf8 mark', 'utf16le', 'win1252'),
  quoteAll: fc.boolean(),
  dash: fc.constantFrom('', '----', 'n/a'),
  order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8, maxLength: 8 }),
});

const two = (n: number): string => String(n).padStart(2, '0');

function writeDate({ day, minute }: Made, form: Writing['date']): string {
  const [y, m, d] = [day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate()];
  const clock = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
  if (form === 'iso') return `${y}-${two(m)}-${two(d)}T${clock}`;
  if (form === 'points') return `${two(d)}.${two(m)}.${y} ${clock}`;
  if (form === 'day first') return `${d}/${m}/${y} ${clock}`;
  if (form === 'month first') return `${m}/${d}/${y} ${clock}`;
  return (25_569 + Date.UTC(y, m - 1, d) / 86_400_000 + minute / 1440).toFixed(8);
}

function write(rows: readonly Made[], form: Writing): Buffer {
  const { heads, words } = LANGUAGES[form.language];
  const number = (tenths: number): string => (tenths / 10).toFixed(1).replace('.', form.decimal);
  const table = rows.map((row) => [
    row.unit,
    writeDate(row, form.date).replace('.', form.date === 'serial' ? form.decimal : '.'),
    words[row.fire],
    words[row.state],
    number(row.o2),
    row.co === '' ? form.dash : String(row.co),
    number(row.flue),
    row.note,
  ]);
  const cell = (text: string): string =>
    form.quoteAll || /["\r\n]/.test(text) || text.includes(form.delimiter) ? `"${text.replaceAll('"', '""')}"` : text;
  const line = (cells: readonly string[]): string =>
    form.order.map((i) => cell(cells[i])).join(form.delimiter) + form.end;
  const text = [heads, ...table].map(line).join('');
  const [name, mark] = form.encoding.split(' ');
  return iconv.encode(text, name, { addBOM: mark === 'mark' || name === 'utf16le' });
}

/** What accepted.csv must say of a reading. */
function told({ unit, day, minute, fire, state, o2, co, flue, note }: Made): string {
  const date =
    day.toISOString().slice(0, 10) + (minute === 0 ? '' : `T${two(Math.floor(minute / 60))}:${two(minute % 60)}`);
  return JSON.stringify([unit, date, fire, state, String(o2 / 10), String(co), String(flue / 10), note]);
}

test('any table that a dialect can express comes back equal, or the import asks', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(made, { minLength: 1, maxLength: 12 }),
      writing,
      fc.integer({ min: 5, max: 400 }),
      async (rows, form, piece) => {
        // Marks for unknown as a note are unknown, too; they are no text.
        fc.pre(rows.every(({ note }) => !/^[-.?*]*$/.test(note) || note === ''));
        const outcome = await readReadings([fileOf('any.csv', write(rows, form), piece)]);
        if (outcome.status === 'question') {
          const { parameter, message } = outcome.question;
          const openDates = /day first|month first/.test(form.date);
          expect([message, parameter === 'dateOrder' ? openDates : form.delimiter !== ',']).toEqual([message, true]);
          return;
        }
        if (outcome.status === 'error') throw new Error(outcome.message);
        const { accepted, duplicates } = outcome.value.tables;
        expect(rowsOf(outcome.value.tables['set-aside'])).toEqual([]);
        const read = rowsOf(accepted).map((row) =>
          JSON.stringify(
            ['unit', 'taken_at', 'fire', 'state', 'o2_pct', 'co_ppm', 'flue_C', 'note'].map((name) => row[name]),
          ),
        );
        const written = [...new Set(rows.map(told))].sort();
        expect(read.sort()).toEqual(written);
        expect(accepted.rows + duplicates.rows).toBe(rows.length);
      },
    ),
    { numRuns: 150 },
  );
});

describe('any damage', () => {
  const HEAD = 'unit,taken_at,fire,state,o2_pct,co2_pct,co_ppm,note';
  const row = (i: number): string =>
    `B-${i},2024-0${1 + (i % 9)}-1${i % 10}T10:15,${i % 2 ? 'high' : 'low'},as_found,${(3 + i / 10).toFixed(1)},9.1,${20 + i},as usual ${i}`;
  const damage = fc.record({
    line: fc.nat(19),
    at: fc.nat(60),
    kind: fc.constantFrom('cut', 'quote', 'delimiter', 'break', 'letter', 'end'),
    length: fc.integer({ min: 1, max: 25 }),
  });

  /** Damages one line; '' would be a line lost for good, which nobody can count. */
  function hurt(line: string, { at, kind, length }: { at: number; kind: string; length: number }): string {
    const place = Math.min(at, line.length - 1);
    const [before, after] = [line.slice(0, place), line.slice(place)];
    if (kind === 'cut') return before + after.slice(length);
    if (kind === 'quote') return `${before}"${after}`;
    if (kind === 'delimiter') return `${before},${after}`;
    if (kind === 'break') return `${before}\n${after}`;
    if (kind === 'letter') return `${before}z${after.slice(1)}`;
    return before;
  }

  test('never loses a reading from the account, and leaves the others as they are', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(damage, { minLength: 1, maxLength: 4, selector: ({ line }) => line }),
        fc.integer({ min: 9, max: 900 }),
        async (hits, piece) => {
          const rows = Array.from({ length: 20 }, (_, i) => row(i));
          const hurtRows = rows.map((text, i) => {
            const hit = hits.find(({ line }) => line === i);
            return hit ? hurt(text, hit) : text;
          });
          const body = hurtRows.join('\n').split('\n');
          const outcome = await readReadings([fileOf('hurt.csv', `${HEAD}\n${body.join('\n')}\n`, piece)]);
          // What is left of a date may be one with day and month either way: that is asked.
          if (outcome.status === 'question' && outcome.question.parameter === 'dateOrder') return;
          if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
          const { tables, files } = outcome.value;
          const [account] = files;
          expect(account.rows_read).toBe(account.accepted + account.set_aside + account.duplicates);
          const lines = body.filter((line) => line.trim() !== '').length;
          expect([account.rows_read, account.lines]).toEqual([lines, { ...account.lines, reading: lines }]);
          const told = rowsOf(tables['accepted']).map(
            ({ unit, o2_pct, co_ppm, note }) => `${unit} ${o2_pct} ${co_ppm} ${note}`,
          );
          for (let i = 0; i < 20; i++)
            if (!hits.some(({ line }) => line === i))
              expect(told).toContain(`B-${i} ${String(Number((3 + i / 10).toFixed(1)))} ${20 + i} as usual ${i}`);
        },
      ),
      { numRuns: 150 },
    );
  });
});
