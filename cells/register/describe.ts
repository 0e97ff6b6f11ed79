import type { Description, Remark } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { FILE_COLUMNS } from '../../shared/readings/columns-table.ts';
import { faultRemarks, leftOut } from '../../shared/readings/told-faults.ts';
import { faultsSchema } from '../../shared/schemas/readings.ts';
import {
  economicsSchema,
  gapsSchema,
  limitsSchema,
  planningSchema,
  supplyLimitsSchema,
  unitsSchema,
} from '../../shared/schemas/register.ts';
import { textsOf } from '../../shared/table/columns.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import type { Table } from '../../shared/table/table.ts';
import type { RegisterResult } from './compute.ts';

export function describe({ tables, faults, notes }: RegisterResult): Description {
  const units = new Set(textsOf(tables['units'], 'unit').codes).size;
  return {
    answer:
      units === 0
        ? say.noRegister()
        : say.registerAnswer(units, tables['units'].rows, tables['limits'].rows, leftOut(faults)),
    tables: [
      { table: 'units', title: 'Units, one row a fuel', columns: shownColumns(unitsSchema) },
      { table: 'limits', title: 'Targets and limits', columns: shownColumns(limitsSchema) },
      { table: 'supply-limits', title: 'Gas supply', columns: shownColumns(supplyLimitsSchema) },
      { table: 'economics', title: 'Fuel and price', columns: shownColumns(economicsSchema) },
      { table: 'planning', title: 'Visits', columns: shownColumns(planningSchema) },
      { table: 'gaps', title: 'Gaps', columns: shownColumns(gapsSchema) },
      { table: 'faults', title: 'Not used', columns: shownColumns(faultsSchema) },
      FILE_COLUMNS,
    ],
    figures: [],
    remarks: [...faultRemarks(faults, notes), ...(units === 0 ? [withoutRegister()] : gaps(tables, units))],
  };
}

const withoutRegister = (): Remark => ({ severity: 'warning', text: say.withoutRegister() });

/** What the register leaves open, and what then stands in its place. */
function gaps(tables: RegisterResult['tables'], all: number): Remark[] {
  const remarks: Remark[] = [];
  const tell = (what: string, known: number, instead: string): void => {
    if (known < all) remarks.push({ severity: 'note', text: say.thinRegister(what, all - known, all, instead) });
  };
  tell(
    'A target',
    unitsIn(tables['limits']),
    'the median of the last as-left readings, else the band of the class, stands in for it',
  );
  tell(
    'The burner',
    unitsWith(tables['units'], 'burner'),
    'its readings are not corrected for air density and its season stays wide',
  );
  tell('The fuel', unitsWith(tables['units'], 'fuel'), 'the reading’s own, else natural gas is taken, and flagged');
  tell('A supply limit', unitsIn(tables['supply-limits']), 'the change of its supply is shown without a verdict');
  tell('Fuel a year', unitsIn(tables['economics']), 'savings are given in per cent only');
  return remarks;
}

const unitsIn = (table: Table): number => new Set(textsOf(table, 'unit').codes).size;

function unitsWith(table: Table, column: string): number {
  const [units, values] = [textsOf(table, 'unit'), textsOf(table, column)];
  return new Set(units.codes.filter((_, row) => values.codes[row] >= 0)).size;
}
