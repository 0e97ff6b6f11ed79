import * as say from '../../../shared/messages/checks.ts';
import type { CheckRows } from '../check-rows.ts';
import {
  bothBases,
  type EfficiencyReading,
  type Explanation,
  efficiencyBasis,
  explainEfficiency,
} from '../efficiency-basis.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

/** Below it water condenses, and neither basis holds without more. */
const LEAST_FLUE_C = 70;
const HIGHEST_O2_PCT = 15;
/** With fewer readings a basis is no habit. */
const LEAST_BASES = 4;
const COLUMNS = ['efficiency_printed_pct'];

interface Basis {
  readonly row: number;
  readonly basis: 'gross' | 'net';
}

/** The printed efficiency, recomputed from O2 and temperatures: gross, net, or what else it fits. */
export function checkEfficiency(rows: CheckRows, report: Report): void {
  const strange = new Map<string, EfficiencyReading[]>();
  const [file, analyzer] = [rows.text('source_file').codes, rows.text('analyzer').codes];
  for (const [from, to] of rows.byUnit) {
    const bases: Basis[] = [];
    for (let row = from; row < to; row++) {
      const reading = readingAt(rows, row);
      if (!reading) continue;
      const basis = efficiencyBasis(reading);
      if (basis === 'gross' || basis === 'net') bases.push({ row, basis });
      if (basis !== 'neither') continue;
      const key = `${file[row]}|${analyzer[row]}`;
      const list = strange.get(key);
      if (list) list.push(reading);
      else strange.set(key, [reading]);
    }
    checkBasis(rows, bases, report);
  }
  for (const list of strange.values()) tellStrange(list, explainEfficiency(list), report);
}

function readingAt(rows: CheckRows, row: number): EfficiencyReading | undefined {
  const [printedPct, o2Pct, flueC, airC] = ['efficiency_printed_pct', 'o2_pct', 'flue_C', 'air_C'].map(
    (name) => rows.number(name)[row],
  );
  const fuel = rows.fuel(row);
  const known = printedPct > 0 && o2Pct >= 0 && o2Pct < HIGHEST_O2_PCT && flueC >= LEAST_FLUE_C && !Number.isNaN(airC);
  return fuel && known ? { row, printedPct, o2Pct, flueC, airC, fuel } : undefined;
}

function checkBasis(rows: CheckRows, bases: readonly Basis[], report: Report): void {
  const nets = bases.filter(({ basis }) => basis === 'net').length;
  if (nets === 0 || nets === bases.length || bases.length < LEAST_BASES) return;
  const usual = nets * 2 >= bases.length ? 'net' : 'gross';
  const printed = rows.number('efficiency_printed_pct');
  for (const { row, basis } of bases)
    if (basis !== usual)
      report({
        check: 'efficiency_basis',
        row,
        columns: COLUMNS,
        sentence: () => say.efficiencyBasis(shown(printed[row]), basis, usual),
        gist: say.efficiencyBasisGist(basis, usual),
      });
}

/** What an analyzer printed that fits neither basis: one cause, where one explains nearly all. */
function tellStrange(list: readonly EfficiencyReading[], cause: Explanation | undefined, report: Report): void {
  const gist =
    cause === undefined
      ? undefined
      : cause.kind === 'fuel'
        ? say.efficiencyFitsFuel(say.fuelWords(cause.fuel), cause.basis)
        : say.efficiencyFitsScale(cause.basis);
  for (const reading of list) {
    const { row, printedPct } = reading;
    report({
      check: cause?.kind === 'scale' ? 'efficiency_shows_other_scale' : 'efficiency_mismatch',
      row,
      columns: cause?.kind === 'scale' ? ['flue_C', 'air_C'] : COLUMNS,
      sentence: () => {
        const { grossPct, netPct } = bothBases(reading);
        return say.efficiencyMismatch(shown(printedPct), shown(grossPct), shown(netPct));
      },
      ...(gist !== undefined && { gist }),
    });
  }
}
