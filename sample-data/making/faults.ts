/** A row of an export as fields, in the order of its head. */
type Row = readonly string[];

const changed = (row: Row, changes: Readonly<Record<number, string>>): Row =>
  row.map((field, index) => changes[index] ?? field);

/** Ten rows of crew one's export that are not as they should be, put between the good ones. Columns: 0 unit, 1 taken_at, 10 o2_pct, 11 co2_pct, 13 co_ppm. */
export function withCanonicalFaults(rows: readonly Row[]): readonly Row[] {
  const at = (index: number): Row => rows[index] ?? [];
  const last = rows.length - 1;
  return [
    ...rows.slice(0, 40),
    at(39), // typed twice
    ...rows.slice(40, 210),
    changed(at(209), { 10: '5.x' }), // slip of the finger
    ...rows.slice(210, 330),
    changed(at(329), { 0: 'HUT-9' }), // no such unit
    ...rows
      .slice(330, 400)
      .map((row) => changed(row, { 0: row[0]?.startsWith('COB') ? row[0].toLowerCase() : (row[0] ?? '') })),
    ...rows.slice(400),
    changed(at(last), { 1: '2027-03-04T10:15' }), // clock of the instrument set wrong
    at(last).map((field, index) => (index >= 9 ? '' : field)), // nothing was measured
  ];
}

/** Faults of crew two's export. Columns: 0 unit, 1 date, 7 O2, 8 CO2, 9 CO. */
export function withCommaFaults(rows: readonly Row[]): readonly Row[] {
  const at = (index: number): Row => rows[index] ?? [];
  return [
    ...rows.slice(0, 60),
    changed(at(59), { 1: '31.11.2022' }), // no such day
    ...rows.slice(60, 150),
    changed(at(149), { 7: '3,,4' }), // slip of the finger
    ...rows.slice(150, 220).map((row) => changed(row, { 0: (row[0] ?? '').replace('-', ' ') })),
    ...rows.slice(220),
  ];
}
