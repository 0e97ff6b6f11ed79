import { CAMPUS } from './campus.ts';
import { csvLine } from './csv-line.ts';
import { chanceFrom } from './random.ts';

/** What happened to units beside visits. */
export function eventsFile(): string {
  return [
    'unit,on,event,note',
    'HUT-2,2021-07-14,replaced,"new condensing unit on the old base, id kept"',
    'DRU-3,2022-06-09,cleaned,heat exchanger brushed',
    'EMB-1,2023-05-02,sensor_renewed,oxygen cell of the trim',
    'COB-4,2020-11-02,visit_without_readings,"no load, no high fire"',
    '',
  ].join('\n');
}

/** Metered gas of the units that have a meter of their own, by heating year. */
export function fuelUseFile(): string {
  const metered = CAMPUS.filter(({ unit }) =>
    ['EMB-1', 'EMB-2', 'FER-2', 'GUL-1', 'GUL-2', 'IRO-1', 'IRO-2'].includes(unit),
  );
  const rows = metered.flatMap((unit) => {
    const fuel = unit.fuels[0];
    if (!fuel) return [];
    return [2023, 2024, 2025].map((year) => {
      const used = Math.round(fuel.annual * (1 + chanceFrom(`fuel ${unit.unit} ${year}`).normal(0, 0.04)));
      const cost = Math.round(used * fuel.price);
      return [unit.unit, fuel.fuel, `${year}-07-01`, `${year + 1}-06-30`, String(used), 'MMBtu', String(cost)];
    });
  });
  return [['unit', 'fuel', 'from', 'to', 'quantity', 'quantity_unit', 'cost'], ...rows]
    .map((fields) => csvLine(fields, ','))
    .join('\n')
    .concat('\n');
}
