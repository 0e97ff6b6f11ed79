import { calendar } from './calendar.ts';
import type { Reading } from './reading.ts';
import { fahrenheit, written } from './written.ts';

const FIRES = { high: 'High fire', low: 'Low fire', single: 'Single stage' } as const;
const STATES = { as_found: 'As found', as_left: 'As left', trial: 'Trial', '': '----' } as const;

const withUnit = (text: string, unit: string): string => (text === '' ? '----' : `${text} ${unit}`);

function block(reading: Reading, number: number): string {
  const lines: readonly (readonly [string, string])[] = [
    ['Test no.', String(number)],
    ['Unit', reading.unit],
    ['Date', calendar.monthDayYear(reading.visit.day)],
    ['Time', calendar.halfDayClock(reading.minute)],
    ['Fuel', reading.fuel === 'natural_gas' ? 'Natural gas' : 'No. 2 oil'],
    ['Fire', FIRES[reading.fire]],
    ['Condition', STATES[reading.state]],
    ['Oxygen', withUnit(written(reading.o2, 1), '%')],
    ['Carbon dioxide', withUnit(written(reading.co2, 1), '%')],
    ['CO, as measured', withUnit(reading.co, 'ppm')],
    ['Flue temperature', withUnit(fahrenheit(reading.flueC).replace('NaN', ''), '°F')],
    ['Air temperature', withUnit(fahrenheit(reading.airC).replace('NaN', ''), '°F')],
    ['Supply, burner off', withUnit(written(reading.staticInwc, 2), 'in. w.c.')],
    ['Supply, burner on', withUnit(written(reading.runningInwc, 2), 'in. w.c.')],
    ['Efficiency (gross)', withUnit(written(reading.efficiencyGross, 1), '%')],
    ['Analyzer', reading.visit.analyzer || '----'],
    ['Tested by', reading.visit.technician],
  ];
  return lines.map(([name, value]) => `${name.padEnd(20)}: ${value}`).join('\r\n');
}

/** Printouts kept in an instrument's memory: one block of names and values a test, units in the values, month/day/year, 12-hour clock, UTF-16 with a byte order mark. */
export function printExport(readings: readonly Reading[]): Uint8Array {
  const preamble = 'Memory contents\r\nQuillmere campus, spring checks\r\n';
  const text = [preamble, ...readings.map((reading, index) => block(reading, index + 1))].join('\r\n\r\n');
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let index = 0; index < text.length; index++) view.setUint16(2 + 2 * index, text.charCodeAt(index), true);
  return bytes;
}
