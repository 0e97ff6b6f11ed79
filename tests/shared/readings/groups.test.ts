import { describe, expect, test } from 'vitest';
import type { NamedAnswer, Question } from '../../../shared/outcome.ts';
import { fileOf } from './file-of.ts';
import { readReadings, rowsOf } from './read-readings.ts';

/** Invented exports with several readings on a line, answered as the page does: each with its known contents. */
const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;

/** Gives to each question the option of the place; returns what was asked, then the readings. */
async function answered(text: string, names: readonly string[], place: number): Promise<string[]> {
  let profiles: readonly NamedAnswer[] = [];
  const told: string[] = [];
  for (;;) {
    const outcome = await readReadings([fileOf('export.csv', text)], { profiles });
    if (outcome.status === 'value')
      return [
        ...told,
        ...rowsOf(outcome.value.tables['accepted']).map((row) => names.map((name) => row[name]).join(' ')),
      ];
    if (outcome.status === 'error' || told.length > 5) throw new Error(JSON.stringify(outcome));
    told.push(asked(outcome.question));
    const { answer } = outcome.question.options[place];
    profiles = [answer as NamedAnswer];
  }
}

const asked = ({ message }: Question): string => /"(.*)" do/.exec(message)?.[1] ?? message;

describe('groups of columns', () => {
  test('heads that need no second line stand in the first', async () => {
    const text = lines(
      'Chaudière;Date;Grand feu;;Petit feu;;Intervenant',
      ';;O2;T fumées;O2;T fumées;',
      ';;%;°C;%;°C;',
      'CH-1;03.04.2022;4,5;165,0;6,2;110,5;ML',
    );
    expect(await answered(text, ['unit', 'fire', 'o2_pct', 'flue_C', 'technician'], 0)).toEqual([
      'CH-1 high 4.5 165 ML',
      'CH-1 low 6.2 110.5 ML',
    ]);
  });

  test('an answer about one of two equal heads keeps each in its group', async () => {
    const text = lines(
      'Boiler,Date,High fire,,,Low fire,,',
      ',,O2,CO raw,Stack,O2,CO raw,Stack',
      'B1,2022-04-03,4.5,30,350,6.2,10,257',
    );
    // (350 - 32) / 1.8 = 176.667 and (257 - 32) / 1.8 = 125 °C.
    expect(await answered(text, ['fire', 'o2_pct', 'co_ppm', 'flue_C'], 1)).toEqual([
      'Stack',
      'high 4.5 30 176.666666667',
      'low 6.2 10 125',
    ]);
  });

  test('the basis of CO is asked once for all its columns, and is that of all', async () => {
    const text = lines('Boiler,Date,O2 Hi,O2 Lo,CO Hi,CO Lo', 'B1,2022-04-03,4.5,6.2,30,22');
    expect(await answered(text, ['fire', 'co_ppm', 'co_air_free_ppm'], 1)).toEqual([
      'CO Hi", "CO Lo',
      'high  30',
      'low  22',
    ]);
  });

  test('what is open in one column is asked after another was answered', async () => {
    const text = lines('Boiler,Date,O2,CO', 'B1,2022-04-03,0.045,30', 'B1,2022-05-03,0.041,28');
    expect(await answered(text, ['o2_pct', 'co_ppm'], 0)).toEqual([
      'export.csv: the values of the column "O2" are 0.045, 0.041: as per cent they would be next to nothing, so they may be shares of 1.',
      'CO',
      '4.5 30',
      '4.1 28',
    ]);
  });
});

test('a profile that names a field takes unit, fire and state from the head', async () => {
  const text = lines('Boiler,Date,Kamin (F),Air (C),O2 Hi,O2 Lo', 'B1,2022-04-03,350,20,4.5,6.2');
  const profiles = [{ columns: { 'Kamin (F)': { field: 'flue' }, 'O2 Lo': { field: 'o2_pct' } } }];
  const outcome = await readReadings([fileOf('export.csv', text)], { profiles });
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  const told = rowsOf(outcome.value.tables['accepted']).map(
    (row) => `${row['fire']} ${row['o2_pct']} ${row['flue_C']}`,
  );
  expect(told).toEqual(['high 4.5 176.666666667', 'low 6.2 176.666666667']);
});
