import type { SourceKey } from '../../shared/cell.ts';
import {
  type CellEntry,
  type DataReference,
  NOTEBOOK_FORMAT,
  NOTEBOOK_VERSION,
  type NotebookDocument,
} from './document.ts';

/** What a review is made of. Files are named by the keys of `data`. */
export interface ReviewRequest {
  readonly title: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  readonly data: readonly DataReference[];
  readonly readings: readonly SourceKey[];
  readonly register: readonly SourceKey[];
  readonly events?: readonly SourceKey[];
  readonly fuelUse?: readonly SourceKey[];
  readonly horizonDays?: number;
  /** Taken where neither reading nor register names a fuel. */
  readonly fuel?: string;
  readonly dateOrder?: 'dmy' | 'mdy' | 'ymd';
  readonly singleReading?: 'as_found' | 'as_left';
  /** What becomes of a reading that stands in two files with other values. */
  readonly revised?: 'keep_last' | 'keep_both';
  /** What is accepted of what the import proposes: 'fires', 'states', 'fuels', 'units', 'events', or one of a unit. */
  readonly accept?: readonly string[];
  /** Whether suspect readings are used in what follows. */
  readonly suspects?: 'in' | 'out';
  /** Mapping profiles of the user's, as read from their file. */
  readonly profiles?: readonly unknown[];
}

/** The notebook of a campus review: the files, what follows from them, who is raised, and what the last visits saved. */
export function campusReview(request: ReviewRequest): NotebookDocument {
  return {
    format: NOTEBOOK_FORMAT,
    version: NOTEBOOK_VERSION,
    title: request.title,
    as_of: request.asOf,
    settings: { seed: 1 },
    data: request.data,
    cells: [...importCells(request), checksCell(request), ...judgingCells(request)],
  };
}

const cell = (kind: string, parameters: CellEntry['parameters']): CellEntry => ({ name: kind, kind, parameters });

/** Only what is given: what is left out takes the kind's default. */
function given(parameters: Readonly<Record<string, unknown>>): CellEntry['parameters'] {
  return Object.fromEntries(Object.entries(parameters).filter(([, value]) => value !== undefined));
}

function importCells({ readings, register, events = [], fuelUse = [], ...request }: ReviewRequest): CellEntry[] {
  const { dateOrder, singleReading, revised, profiles } = request;
  const accept = acceptOf(request.accept ?? []);
  return [
    cell('register', given({ files: register, dateOrder, profiles })),
    cell(
      'readings',
      given({
        files: readings,
        register: 'register',
        dateOrder,
        singleReading,
        revised,
        profiles,
        accept: accept.readings,
      }),
    ),
    cell(
      'events',
      given({ files: events, register: 'register', notes: 'readings', dateOrder, profiles, accept: accept.events }),
    ),
    ...(fuelUse.length > 0
      ? [cell('fuel-use', given({ files: fuelUse, register: 'register', dateOrder, profiles }))]
      : []),
  ];
}

const EVENTS = 'events';

/** What of it is for the readings, and which events of notes; undefined where there is nothing. */
function acceptOf(accept: readonly string[]): {
  readings: readonly string[] | undefined;
  events: readonly string[] | undefined;
} {
  const isEvent = (one: string): boolean => one === EVENTS || one.startsWith(`${EVENTS}:`);
  const some = (list: readonly string[]): readonly string[] | undefined => (list.length > 0 ? list : undefined);
  return {
    readings: some(accept.filter((one) => !isEvent(one))),
    events: some(accept.filter(isEvent).map((one) => (one === EVENTS ? 'all' : one.slice(EVENTS.length + 1)))),
  };
}

/** What follows reads the checked readings: without what cannot be, and without what is suspect if so wanted. */
function checksCell({ suspects }: ReviewRequest): CellEntry {
  return cell('checks', given({ readings: 'readings', register: 'register', suspects }));
}

const CHECKED = { readings: 'checks' };

function judgingCells({ fuelUse = [], horizonDays, fuel }: ReviewRequest): CellEntry[] {
  const readsEvents = { events: 'events' };
  return [
    cell('derive', given({ ...CHECKED, register: 'register', defaultFuel: fuel })),
    cell('drift', given({ ...CHECKED, derive: 'derive', register: 'register', ...readsEvents, horizonDays })),
    cell('supply', given({ ...CHECKED, derive: 'derive', register: 'register', ...readsEvents, horizonDays })),
    cell('instruments', { ...CHECKED, drift: 'drift' }),
    cell('raise', { ...CHECKED, ...readsEvents }),
    cell('savings', { ...CHECKED, fuelUse: fuelUse.length > 0 ? 'fuel-use' : '' }),
    cell('chart', {}),
    cell('note', { text: NOTE }),
  ];
}

const NOTE =
  'Old readings do not show what a unit does today. Before a visit, look at the evidence of the raised units; at the visit, read as found before anything is touched.';
