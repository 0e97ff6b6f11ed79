import { calendar } from './calendar.ts';
import { csvLine } from './csv-line.ts';
import type { Reading } from './reading.ts';
import { fahrenheit, written } from './written.ts';

const HEAD =
  'Anlage;Datum;Uhrzeit;Brennstoff;Laststufe;Zustand;Nachgestellt;O2 [%];CO2 [%];CO gemessen [ppm];Abgastemperatur [°C];Verbrennungsluft [°C];Ruhedruck [mbar];Fließdruck [mbar];Wirkungsgrad [%];Messgerät;Techniker;Bemerkung';

const FIRES = { high: 'Volllast', low: 'Kleinlast', single: '' } as const;
const STATES = { as_found: 'vorher', as_left: 'nachher', trial: 'Zwischenmessung', '': '' } as const;
const ADJUSTED = { yes: 'ja', no: 'nein', '': '' } as const;
const FUELS = { natural_gas: 'Erdgas', no2_oil: 'Heizöl EL' } as const;
const MBAR_PER_INWC = 2.4908891;

const comma = (text: string): string => text.replace('.', ',');
/** The whole °F that crew one would note, in °C: so that a visit that both crews typed in carries the same numbers. */
const celsius = (value: number): string =>
  Number.isNaN(value) ? '' : comma(written((Number(fahrenheit(value)) - 32) / 1.8, 1));
const mbar = (inwc: number): string =>
  Number.isNaN(inwc) ? '' : comma(written(Number(written(inwc, 2)) * MBAR_PER_INWC, 2));

export function commaRow(reading: Reading): readonly string[] {
  const { visit } = reading;
  return [
    reading.unit,
    calendar.dayMonthYear(visit.day),
    calendar.clock(reading.minute),
    FUELS[reading.fuel],
    FIRES[reading.fire],
    STATES[reading.state],
    ADJUSTED[reading.adjusted],
    comma(written(reading.o2, 1)),
    comma(written(reading.co2, 1)),
    reading.co,
    celsius(reading.flueC),
    celsius(reading.airC),
    mbar(reading.staticInwc),
    mbar(reading.runningInwc),
    comma(written(reading.efficiencyNet, 1)),
    visit.analyzer,
    visit.technician,
    reading.note,
  ];
}

/** Crew two's export: semicolons, decimal commas, °C, mbar, day.month.year, German heads with units in them; UTF-8 with a byte order mark, CRLF. */
export function commaExport(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${[HEAD, ...rows.map((row) => csvLine(row, ';'))].join('\r\n')}\r\n`;
}
