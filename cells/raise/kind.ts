import type { Blank, CellKind, Read, Segment } from '../../shared/cell.ts';
import { lanesOf } from '../../shared/lanes/lanes-of.ts';
import { basisName } from '../../shared/messages/raise.ts';
import { raisedSchema } from '../../shared/schemas/raised.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { readIfThere } from '../../shared/sentence/read-if-there.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { shareBlank } from '../../shared/sentence/share-blank.ts';
import { describeTable } from '../../shared/table/describe-table.ts';
import { compute, type RaiseResult } from './compute.ts';
import { type Evidence, evidenceCells, evidenceReads, gatherEvidence } from './evidence.ts';
import { type RaiseParameters, readParameters } from './parameters.ts';

export const kind: CellKind<RaiseParameters, RaiseResult, Evidence> = {
  name: 'raise',
  title: 'Raised units',
  purpose: 'Says which unit to visit, why, how sure it is, and what to check first.',
  readParameters,
  reads,
  sources: () => [],
  settings: ['referenceAirC'],
  sentence,
  details,
  fit: { parameters: evidenceCells, reads: evidenceReads, compute: gatherEvidence },
  compute,
  describe: describeTable('raised', 'Raised units', raisedSchema),
  working: ({ working }, _column, row) => working(row),
  files: ({ tables }) => [{ name: 'raised.csv', table: tables['raised'] }],
  lanes: ({ history, asOf }, units) => lanesOf(history, units, asOf),
};

function reads(parameters: RaiseParameters): Read[] {
  return [
    ...readOf(parameters.readings, 'accepted'),
    ...readOf(parameters.register, 'units', 'supply-limits', 'economics', 'planning'),
    // High CO and a supply over its maximum are facts of readings and register: no failing fit may hide them.
    ...readIfThere(parameters.events, 'events'),
    ...readIfThere(parameters.derive, 'derived', 'fuels', 'exponents'),
    ...readIfThere(parameters.drift, 'drift', 'points', 'path'),
    ...readIfThere(parameters.supply, 'supply', 'points', 'path'),
    ...readIfThere(parameters.instruments, 'instruments'),
  ];
}

const BASES = ['air_free', 'at_3pct_o2', 'as_measured'].map((value) => ({ value, label: basisName(value) }));

/** What a service manager changes. */
function sentence(parameters: RaiseParameters): Segment[] {
  const { leastChance, falseDiscoveryRate, coLimitPpm, coBasis, readings, register } = parameters;
  return [
    'Raise units whose chance of leaving tolerance is at least ',
    shareBlank('leastChance', 'least chance of leaving', leastChance),
    ', with at most ',
    shareBlank('falseDiscoveryRate', 'share of false discoveries', falseDiscoveryRate),
    ' false discoveries in each list, and CO from ',
    numberBlank('coLimitPpm', 'CO limit', coLimitPpm, { unit: 'ppm', minimum: 1, maximum: 10_000 }),
    ' ',
    choiceBlank('coBasis', 'basis of the CO limit', coBasis, BASES),
    ' that nothing has closed, by ',
    readingsBlank(readings),
    ' and ',
    cellBlank('register', 'register', register, ['register'], { optional: true }),
    '.',
  ];
}

function details(parameters: RaiseParameters): Segment[] {
  const { signFalseDiscoveryRate, richO2Pct, summerAirC, unseenMonths } = parameters;
  const { events, derive, drift, supply, instruments } = parameters;
  const forecast = (parameter: string, label: string, name: string): Blank =>
    cellBlank(parameter, label, name, [parameter], { optional: true });
  return [
    'Also flues that get hotter, fires that scatter and units that come back, at most ',
    shareBlank('signFalseDiscoveryRate', 'share of such signs by chance', signFalseDiscoveryRate),
    ' of them by chance; burners under ',
    numberBlank('richO2Pct', 'O2 of a rich burner', richO2Pct, { unit: '% O2', minimum: 0, maximum: 10 }),
    ' in air of ',
    numberBlank('summerAirC', 'air of the hottest days', summerAirC, { unit: '°C', minimum: 0, maximum: 60 }),
    '; units unread for ',
    numberBlank('unseenMonths', 'months without a reading', unseenMonths, { unit: 'months', minimum: 1, maximum: 240 }),
    '. Reads ',
    forecast('drift', 'drift', drift),
    ', ',
    forecast('supply', 'gas supply', supply),
    ', ',
    forecast('instruments', 'instruments', instruments),
    ', ',
    forecast('derive', 'derived values', derive),
    ' and ',
    forecast('events', 'events', events),
    ' too.',
  ];
}
