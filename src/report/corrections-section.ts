import type { Correction } from '../../shared/corrections/correction.ts';
import { correctionWords } from '../../shared/corrections/correction-words.ts';
import { readCorrections } from '../../shared/corrections/read-corrections.ts';
import { type Markup, markup } from '../../shared/markup/markup.ts';
import * as say from '../../shared/messages/report.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { ReportCell } from './report-input.ts';

const MOST_ROWS = 120;

interface Fate {
  readonly status: string;
  readonly before: string;
  readonly rows: number;
}

/** Every correction that was made by hand: how many there are and what became of each. Empty where there is none. */
export function correctionsSection(cells: readonly ReportCell[]): Markup {
  const list = cells.flatMap((cell) => {
    const fates = fatesOf(cell);
    return correctionsOf(cell).map((one) => ({ one, fate: fateOf(one, fates) }));
  });
  if (list.length === 0) return markup``;
  const count = (status: string): number => list.filter(({ fate }) => fate.status === status).length;
  const shown = list.slice(0, MOST_ROWS);
  return markup`<section><h2>${say.correctionsHead()}</h2>
<p>${say.correctionsLine(list.length, count('applied'), count('lifted'), count('lost'), count('overruled'))}</p>
<p class="quiet">${say.correctionsShown(shown.length, list.length)}</p>
<table><thead><tr>${say.correctionColumns().map((title) => markup`<th>${title}</th>`)}</tr></thead>
<tbody>${shown.map(({ one, fate }) => row(one, fate))}</tbody></table></section>`;
}

const row = (one: Correction, { status, before, rows }: Fate): Markup =>
  markup`<tr><td>${correctionWords(one)}</td><td class="d">${before}</td><td>${one.reason}</td><td class="d">${one.initials}</td><td class="d">${one.made_on}</td><td>${say.correctionFate(status, rows)}</td></tr>
`;

function correctionsOf({ state }: ReportCell): readonly Correction[] {
  const read = readCorrections((state.parameters as { corrections?: unknown } | undefined)?.corrections ?? []);
  return read.status === 'value' ? read.value : [];
}

function fateOf({ id, lifted }: Correction, fates: ReadonlyMap<string, Fate>): Fate {
  return fates.get(id) ?? { status: lifted ? 'lifted' : 'open', before: '', rows: 0 };
}

function fatesOf({ tables }: ReportCell): ReadonlyMap<string, Fate> {
  const table = tables['corrections'];
  if (!table) return new Map();
  const [id, status, before] = ['id', 'status', 'before'].map((name) => textsOf(table, name));
  const rows = numbersOf(table, 'rows');
  return new Map(
    Array.from({ length: table.rows }, (_, at) => [
      textAt(id, at),
      { status: textAt(status, at), before: textAt(before, at), rows: rows[at] },
    ]),
  );
}
