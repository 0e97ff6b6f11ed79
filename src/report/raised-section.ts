import { drawLaneKey } from '../../shared/lanes/draw-lane-key.ts';
import { drawLanes } from '../../shared/lanes/draw-lanes.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import { type Markup, markup, trusted } from '../../shared/markup/markup.ts';
import { fireName, fuelName } from '../../shared/messages/lanes.ts';
import * as say from '../../shared/messages/report.ts';
import { percent } from '../../shared/messages/words.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { ReportWorking } from './report-working.ts';
import { type PrintedColumn, printTable, rowsWhere } from './sheet.ts';
import { workingAnchor } from './working-section.ts';

/** With at most this many units drawn, some three to a page, and so many rows below them the report stays short. */
const DRAWN_UNITS = 200;
const FURTHER_ROWS = 1500;
/** Findings in the list at the front. */
const INDEX_ROWS = 16;
const TIERS = ['safety', 'open', 'supply', 'tolerance', 'cost', 'data'] as const;

/** The raised units in order of rank, each with all its findings and its fire lanes; the rest as a plain table. */
export function raisedSection(
  raised: Table | undefined,
  lanes: readonly UnitLanes[],
  workings: readonly ReportWorking[],
  referenceAirC: number,
): Markup {
  if (!raised) return markup`<section><h2>${say.raisedHead()}</h2><p>${say.nothingJudged()}</p></section>`;
  if (raised.rows === 0) return markup`<section><h2>${say.raisedHead()}</h2><p>${say.nothingRaised()}</p></section>`;
  const unit = textsOf(raised, 'unit');
  const rowsOfUnit = new Map<string, number[]>();
  for (let row = 0; row < raised.rows; row++) {
    const rows = rowsOfUnit.get(textAt(unit, row)) ?? [];
    rowsOfUnit.set(textAt(unit, row), [...rows, row]);
  }
  const drawn = new Map(lanes.map((entry) => [entry.unit, entry]));
  const entries = [...rowsOfUnit];
  const worked = new Set(workings.map(({ row }) => row));
  const full = lanes.length > 0 ? Math.min(Math.max(lanes.length, 1), DRAWN_UNITS) : DRAWN_UNITS;
  return markup`<section><h2>${say.raisedHead()}</h2>
${tally(raised, rowsOfUnit)}
${printTable(
  raised,
  rowsWhere(raised, (row) => row < INDEX_ROWS),
  SHORT,
)}<p class="quiet">${say.indexShown(Math.min(raised.rows, INDEX_ROWS), raised.rows)}</p>
<p class="quiet">${say.keyLine(referenceAirC)}</p>${trusted(drawLaneKey())}
${entries.slice(0, full).map(([name, rows]) => unitBlock(name, rows, raised, drawn.get(name), worked))}
${further(
  raised,
  entries.slice(full).flatMap(([, rows]) => rows),
)}</section>`;
}

/** How many units stand worst in each tier. */
function tally(raised: Table, rowsOfUnit: ReadonlyMap<string, readonly number[]>): Markup {
  const tier = textsOf(raised, 'tier');
  const worst = [...rowsOfUnit.values()].map(([first]) => textAt(tier, first));
  return markup`<ul class="tally">${TIERS.map((name) => {
    const units = worst.filter((found) => found === name).length;
    return markup`<li class="${name === 'safety' && units > 0 ? 'grave' : ''}"><b>${units}</b>${say.tierName(name)}</li>`;
  })}</ul>`;
}

function unitBlock(
  name: string,
  rows: readonly number[],
  raised: Table,
  lanes: UnitLanes | undefined,
  worked: ReadonlySet<number>,
): Markup {
  const tier = textAt(textsOf(raised, 'tier'), rows[0]);
  const picture = lanes && (lanes.lanes.length > 0 || lanes.supply) ? trusted(drawLanes(lanes, 'large')) : markup``;
  return markup`<article class="unit${tier === 'cost' || tier === 'data' ? ' mild' : ''}"><header><h3>${name}</h3><span class="place">${lanes?.place ?? ''}</span><span class="tier ${tier}">${say.tierName(tier)}</span></header>
${rows.map((row) => findingBlock(raised, row, worked.has(row)))}${picture}</article>
`;
}

function findingBlock(raised: Table, row: number, hasWorking: boolean): Markup {
  const text = (name: string): string => textAt(textsOf(raised, name), row);
  const number = (name: string): number => numbersOf(raised, name)[row];
  const [fire, fuel] = [text('fire'), text('fuel')];
  const place = [fire === '' ? '' : `${fireName(fire)} fire`, fuel === '' ? '' : fuelName(fuel)].filter(
    (part) => part !== '',
  );
  const chance = number('probability');
  const rate = number('false_discovery_rate');
  const facts = [
    ...place,
    Number.isFinite(chance) ? say.chanceWords(percent(chance), writeDay(number('by_date'))) : '',
    Number.isFinite(rate) ? say.falseWords(percent(rate)) : '',
    Number.isFinite(number('readings_used')) ? say.readingsWords(number('readings_used')) : '',
  ].filter((part) => part !== '');
  return markup`<div class="finding"><div class="rank">${number('rank')}</div><div><p class="what">${say.reasonName(text('reason'))} <span>${facts.join(' · ')}</span></p>
<p>${text('evidence')}${hasWorking ? markup` <a href="#${workingAnchor(row)}">${say.workingLink()}</a>` : ''}</p><p class="check"><b>${say.checkHead()}:</b> ${text('check_first')}</p></div></div>`;
}

function further(raised: Table, rows: readonly number[]): Markup {
  if (rows.length === 0) return markup``;
  const shown = rows.slice(0, FURTHER_ROWS);
  return markup`<h3>${say.moreRaisedHead()}</h3><p class="quiet">${say.moreRaised(shown.length, rows.length)}</p>
${printTable(raised, shown, SHORT)}`;
}

const SHORT: readonly PrintedColumn[] = [
  { column: 'rank', title: 'Rank' },
  { column: 'unit', title: 'Unit' },
  { column: 'fuel', title: 'Fuel', words: fuelName },
  { column: 'fire', title: 'Fire', words: fireName },
  { column: 'reason', title: 'Reason', words: say.reasonName },
  { column: 'tier', title: 'Tier', words: say.tierName },
  { column: 'probability', title: 'Chance', share: true },
  { column: 'by_date', title: 'By' },
];
