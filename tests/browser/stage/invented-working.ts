import type { ShownWorking } from '../../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../../shared/working/working.ts';

const step = (name: string, title: string, symbols: string, numbers: string, result: string) => ({
  ...{ name, title, symbols, numbers, result, stated: result },
  ...{ value: 1, sd: 0.4, unit: '%', source: 'stoichiometry', validity: 'Complete combustion.' },
});

/** A short working of nothing in particular; an input of it leads on to another one. */
export function inventedWorking(place: NumberPlace): ShownWorking {
  const further = place.column === 'lambda';
  return {
    place,
    name: place.column,
    title: further ? 'Air ratio lambda' : 'Combustion efficiency, gross',
    steps: [
      step('stack_loss_pct', 'Stack loss, gross', 'q = q,dry + q,water', 'q = 4.9 % + 11.8 %', '16.7 %'),
      step('efficiency', 'Combustion efficiency, gross', 'η,gross = 100 − q', 'η,gross = 100 − 16.7 %', '83.3 %'),
    ],
    inputs: [
      {
        name: 'reading.o2_pct',
        title: 'O2 as read',
        symbol: 'O2,shown',
        shown: '4.8 %',
        stated: '4.80 %',
        shownSd: '0.17 %',
      },
      {
        ...{ name: 'lambda', title: 'Air ratio lambda', symbol: 'λ', shown: '1.31', stated: '1.31', shownSd: '' },
        ...(further ? {} : { from: { ...place, column: 'lambda' } }),
      },
    ],
    budget: [
      ...(['Flue gas temperature as read', 'O2 as read'] as const).map((title, i) => ({
        ...{ input: title, title, value: 1, sd: 0.1, slope: 1, contribution: 0.39 - i / 3, percent: 97.7 - 95.4 * i },
      })),
    ],
    functions: [{ usage: 'otherwise(x, y)', title: 'x where it is known, else y' }],
    readings: [
      {
        ...{ unit: 'N-1', takenAt: '2024-03-01T09:12', fire: 'high', state: 'as_found', fuel: 'natural_gas' },
        ...{ file: 'north.csv', line: 12, fields: ['o2_pct'] },
        origin: {
          ...{ file: 'north.csv', line: 12, text: 'N-1,2024-03-01T09:12,high,as_found,4.8' },
          cells: [{ field: 'o2_pct', head: 'o2_pct', position: 5, text: '4.8' }],
          byHeads: [],
        },
        amended: [],
      },
    ],
    sources: [{ key: 'stoichiometry', short: 'Stoichiometry', full: 'Any handbook.', standing: 'common practice' }],
  };
}
