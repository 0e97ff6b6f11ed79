import type { SourceFile } from '../cell.ts';
import type { Outcome } from '../outcome.ts';
import { EVENT_VOCABULARY } from './event-vocabulary.ts';
import { FUEL_USE_VOCABULARY } from './fuel-use-vocabulary.ts';
import type { FilePlan } from './mapping.ts';
import { planFile } from './plan-file.ts';
import type { Profile } from './profile.ts';
import { REGISTER_VOCABULARY } from './register-vocabulary.ts';
import { READINGS_VOCABULARY, type Vocabulary } from './vocabulary.ts';

export type TableKind = Profile['table'];

/** What a file is, and how it would be read as that. */
export interface TableKindFound {
  readonly kind: TableKind;
  readonly plan: Outcome<FilePlan>;
}

interface Candidate {
  readonly kind: TableKind;
  readonly vocabulary: Vocabulary;
  /** Fields without which a table is none of the kind; readings need a measured value as well. */
  readonly needs: readonly string[];
  readonly words: string;
}

/** In the order in which they are preferred where a file could be two of them. */
const CANDIDATES: readonly Candidate[] = [
  {
    kind: 'readings',
    vocabulary: READINGS_VOCABULARY,
    needs: ['taken_at'],
    words: 'the unit, the date and at least one measured value',
  },
  {
    kind: 'fuel-use',
    vocabulary: FUEL_USE_VOCABULARY,
    needs: ['unit', 'from', 'to', 'quantity'],
    words: 'the unit, the first and the last day and the quantity',
  },
  {
    kind: 'events',
    vocabulary: EVENT_VOCABULARY,
    needs: ['unit', 'on', 'event'],
    words: 'the unit, the day and the event',
  },
  { kind: 'register', vocabulary: REGISTER_VOCABULARY, needs: ['unit'], words: 'the unit' },
];

/** What kind of table a file is: the one that has what it needs and makes the most columns understood; else readings. */
export async function findTableKind(file: SourceFile, profiles: readonly Profile[]): Promise<TableKindFound> {
  let readings: TableKindFound | undefined;
  let best: TableKindFound | undefined;
  let most = 0;
  for (const { kind, vocabulary, needs, words } of CANDIDATES) {
    const own = profiles.filter(({ table }) => table === kind);
    const plan = await planFile(file, vocabulary, { profiles: own, needs: words });
    if (kind === 'readings') readings = { kind, plan };
    if (plan.status !== 'value') continue;
    const known = plan.value.columns.filter(({ field }) => field !== '');
    const fields = new Set([...known, ...plan.value.constants].map(({ field }) => field));
    const measured =
      kind !== 'readings' || fields.has('co') || [...fields].some((name) => vocabulary.fields.get(name)?.measured);
    if (!measured || !needs.every((field) => fields.has(field))) continue;
    const score = known.reduce((sum, { confidence }) => sum + confidence, 0);
    // A word in the middle of a text is no table of one column.
    if (known.length < 2 && plan.value.headRecords > 1) continue;
    // A table of readings that lacks its date is still one: it understands more heads than the ids of a register are.
    if (score <= most) continue;
    most = score;
    best = { kind, plan };
  }
  const missed = readings?.plan.status === 'value' ? readings.plan.value : undefined;
  const half = missed?.columns.filter(({ field }) => READINGS_VOCABULARY.fields.get(field)?.measured).length ?? 0;
  return best && (best.kind !== 'register' || most > half) ? best : (readings as TableKindFound);
}
