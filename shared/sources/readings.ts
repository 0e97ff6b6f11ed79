import type { Source } from './source.ts';

/** What the import relies on. */
export const READINGS_SOURCES = {
  rfc4180: {
    short: 'RFC 4180',
    full: 'Y. Shafranovich: Common Format and MIME Type for Comma-Separated Values (CSV) Files. RFC 4180, October 2005.',
    standing: 'memory',
  },
  iso8601: {
    short: 'ISO 8601-1',
    full: 'ISO 8601-1:2019 Date and time: Representations for information interchange, Part 1: Basic rules.',
    standing: 'memory',
  },
  posixStrptime: {
    short: 'POSIX strptime',
    full: 'IEEE Std 1003.1-2017, strptime(): two-digit years 69 to 99 are 1969 to 1999, 00 to 68 are 2000 to 2068.',
    standing: 'memory',
  },
  iso13443: {
    short: 'ISO 13443',
    full: 'ISO 13443:1996 Natural gas: Standard reference conditions (15 °C and 101.325 kPa).',
    standing: 'memory',
  },
  cfr98c1: {
    short: '40 CFR 98 Table C-1',
    full: '40 CFR Part 98, Subpart C, Table C-1: Default CO2 emission factors and high heat values for various types of fuel.',
    standing: 'memory',
  },
  siegert1BImSchV: {
    short: '1. BImSchV, Siegert',
    full: 'Verordnung über kleine und mittlere Feuerungsanlagen (1. BImSchV), Anlage 2: flue loss by Siegert with A and B of natural gas, liquefied gas and fuel oil.',
    standing: 'memory',
  },
  exportHeads: {
    short: 'heads and words of exports',
    full: 'Heads, units and words that exports of readings use in six languages, and how a steady reading is recognised.',
    standing: 'common practice',
  },
} as const satisfies Readonly<Record<string, Source>>;
