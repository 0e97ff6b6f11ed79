import { markup, trusted } from '../../shared/markup/markup.ts';
import * as say from '../../shared/messages/report.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { settingsOf } from '../../shared/settings.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { accountSection } from './account-section.ts';
import { checksSection } from './checks-section.ts';
import { columnsSection } from './columns-section.ts';
import { correctionsSection } from './corrections-section.ts';
import { figuresSection } from './figures-section.ts';
import {
  cautionsBox,
  defaultsSection,
  methodsSection,
  notesSection,
  sourcesSection,
  troubles,
} from './methods-section.ts';
import { raisedSection } from './raised-section.ts';
import type { ReportCell, ReportInput } from './report-input.ts';
import { REPORT_STYLE } from './report-style.ts';
import { workingSection } from './working-section.ts';

/** Nothing is fetched and nothing runs: the policy says so to the browser as well. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/**
 * The finished notebook as one printable HTML file: no network, no script, the same bytes for the same input. Every text
 * that comes from the data is escaped. It is held to the raised units and to a few pages of everything else, so that a
 * huge fleet stays under 200 pages.
 */
export function renderReport(input: ReportInput): string {
  const { title, asOf, cells, lanes, workings, sources } = input;
  const settings = settingsOf(input);
  const states = cells.map(({ state }) => state);
  const raising = cells.find(({ state, tables }) => state.kind === 'raise' && tables['raised']);
  const readings = cells.find(({ state, tables }) => state.kind === 'readings' && tables['account']);
  const checks = cells.find(({ state, tables }) => state.kind === 'checks' && tables['findings']);
  const body = markup`<h1>${title}</h1><p class="quiet">${say.asOfLine(writeDay(asOf))}. ${say.whatItIs()}</p>
${troubles(states)}
<p class="answer">${raising?.state.description?.answer ?? ''}</p>
${cautionsBox()}
${raisedSection(raising?.tables['raised'], lanes, workings, settings.referenceAirC)}
${notesSection(states)}
${accountSection(readings?.tables['account'], readings?.tables['set-aside'])}
${columnsSection(readings?.tables['columns'])}
${checksSection(checks?.tables['findings'], checks?.state.description?.answer ?? '')}
${correctionsSection(cells.filter(({ state }) => state.kind === 'corrections'))}
${figuresSection(cells.map(figuresOf), unitsOf(raising?.tables['raised']), settings)}
${workingSection(raising?.tables['raised'], workings)}
${defaultsSection(states)}
${methodsSection(states)}
${sourcesSection(sources)}`;
  return `${
    markup`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${trusted(POLICY)}">
<title>${title}</title><style>${trusted(REPORT_STYLE)}</style></head>
<body><main>${body}</main></body></html>`.text
  }\n`;
}

const figuresOf = ({ state, tables }: ReportCell) => ({
  kind: state.kind,
  title: state.title,
  answer: state.description?.answer ?? '',
  tables,
});

function unitsOf(raised: Table | undefined): Set<string> {
  if (!raised) return new Set();
  const unit = textsOf(raised, 'unit');
  return new Set(Array.from({ length: raised.rows }, (_, row) => textAt(unit, row)));
}
