import type { CellKind } from '../../../shared/cell.ts';
import { yieldTurn } from '../../engine/yield-turn.ts';
import type { FromHelper, ToHelper } from './messages.ts';

type Answer = (question: never) => unknown;
type Shards = Map<number, Answer>;

/** How long a helper answers before it looks whether its crew is still wanted, ms. */
const SLICE_MS = 30;

/** The helper's side: keeps prepared shards and answers questions about them. Returns what takes its messages. */
export function serveCrews(
  catalogue: ReadonlyMap<string, CellKind>,
  post: (message: FromHelper) => void,
): (message: ToHelper) => void {
  const crews = new Map<number, Shards>();
  /** A shard that could not be prepared answers with why. */
  const faults = new Map<number, string>();
  const prepare = ({ crew, kind, work, place, shard }: Extract<ToHelper, { to: 'prepare' }>): void => {
    const make = catalogue.get(kind)?.crews?.[work];
    if (!make) throw new Error(`the kind ${kind} has no work named ${work}`);
    const shards = crews.get(crew) ?? new Map<number, Answer>();
    crews.set(crew, shards.set(place, make(shard as never)));
  };
  const answer = async ({ crew, ask, question }: Extract<ToHelper, { to: 'answer' }>): Promise<void> => {
    try {
      const fault = faults.get(crew);
      if (fault !== undefined) throw new Error(fault);
      const parts = await answerAll(crews.get(crew), question, () => crews.has(crew));
      if (parts) post({ crew, ask, parts });
    } catch (cause) {
      post({ crew, ask, fault: textOf(cause) });
    }
  };
  return (message) => {
    if (message.to === 'answer') void answer(message);
    else if (message.to === 'dismiss') {
      crews.delete(message.crew);
      faults.delete(message.crew);
    } else
      try {
        prepare(message);
      } catch (cause) {
        faults.set(message.crew, textOf(cause));
      }
  };
}

/** Undefined where the crew was dismissed on the way: nobody waits for the rest. */
async function answerAll(
  shards: Shards | undefined,
  question: unknown,
  isWanted: () => boolean,
): Promise<readonly { readonly place: number; readonly part: unknown }[] | undefined> {
  const parts: { place: number; part: unknown }[] = [];
  let began = performance.now();
  for (const [place, answer] of shards ?? []) {
    if (performance.now() - began > SLICE_MS) {
      await yieldTurn();
      if (!isWanted()) return undefined;
      began = performance.now();
    }
    parts.push({ place, part: answer(question as never) });
  }
  return parts;
}

const textOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
