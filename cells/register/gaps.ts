import * as say from '../../shared/messages/register-gaps.ts';
import { gapsSchema } from '../../shared/schemas/register.ts';
import { numbersOf, textAt, textColumn, textsOf } from '../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';

interface Gap {
  readonly unit: string;
  readonly field: string;
  readonly missing: string;
  readonly instead: string;
}

/** What the register leaves empty, a row a unit and field, with what stands in its place until somebody fills it. */
export function gapsTable(tables: Readonly<Record<string, Table>>): Table {
  const { units } = tables;
  const unit = textsOf(units, 'unit');
  const [fuel, burner, air, firing] = ['fuel', 'burner', 'air_source', 'firing'].map((name) => textsOf(units, name));
  const bands = bandsOf(tables['limits']);
  const supplies = suppliesOf(tables['supply-limits']);
  const gaps = new Map<string, Gap>();
  for (let row = 0; row < units.rows; row++) {
    const name = textAt(unit, row);
    const tell = (field: string, missing: string, instead: string): void => {
      gaps.set(`${name}\n${field}`, { unit: name, field, missing, instead });
    };
    if (textAt(fuel, row) === '') tell('fuel', say.fuel(), say.fuelInstead());
    if (textAt(burner, row) === '') tell('burner', say.burner(), say.burnerInstead());
    if (textAt(air, row) === '') tell('air_source', say.airSource(), say.airSourceInstead());
    const band = bands.get(name) ?? { of: textAt(firing, row) === 'single' ? 'o2_single' : 'o2_high', wide: false };
    if (!bands.has(name)) tell(`${band.of}_target_pct`, say.target(band.of), say.targetInstead());
    if (!band.wide) tell(`${band.of}_tolerance_pct`, say.tolerance(band.of), say.targetInstead());
    const [lower, upper] = supplies.get(name) ?? [Number.NaN, Number.NaN];
    if (Number.isNaN(lower)) tell('supply_min', say.supplyMin(), say.supplyInstead());
    if (Number.isNaN(upper)) tell('supply_max', say.supplyMax(), say.supplyInstead());
  }
  return laidOut([...gaps.values()]);
}

function laidOut(gaps: readonly Gap[]): Table {
  const values: Readonly<Record<string, Column>> = {
    unit: textColumn(gaps.map((gap) => gap.unit)),
    missing: textColumn(gaps.map(({ missing }) => missing)),
    instead: textColumn(gaps.map(({ instead }) => instead)),
    field: textColumn(gaps.map(({ field }) => field)),
  };
  return makeTable(gapsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

/** Of each unit with a target: what its first is in ('o2_high'), and whether any has a band. */
function bandsOf(limits: Table): ReadonlyMap<string, { readonly of: string; readonly wide: boolean }> {
  const [unit, fire, quantity] = ['unit', 'fire', 'quantity'].map((name) => textsOf(limits, name));
  const bounds = ['setting_lower_pct', 'setting_upper_pct', 'service_lower_pct', 'service_upper_pct'].map((name) =>
    numbersOf(limits, name),
  );
  const found = new Map<string, { of: string; wide: boolean }>();
  for (let row = 0; row < limits.rows; row++) {
    const name = textAt(unit, row);
    const wide = bounds.some((values) => !Number.isNaN(values[row]));
    const before = found.get(name);
    const of = before?.of ?? `${textAt(quantity, row).replace(/_pct$/, '')}_${textAt(fire, row)}`;
    found.set(name, { of, wide: wide || before?.wide === true });
  }
  return found;
}

function suppliesOf(limits: Table): ReadonlyMap<string, readonly [number, number]> {
  const unit = textsOf(limits, 'unit');
  const [lower, upper] = ['supply_min_Pa', 'supply_max_Pa'].map((name) => numbersOf(limits, name));
  return new Map(Array.from({ length: limits.rows }, (_, row) => [textAt(unit, row), [lower[row], upper[row]]]));
}
