import type { CellKind } from '../../../shared/cell.ts';
import type { FromHelper, ToHelper } from './messages.ts';

type Answer = (question: never) => unknown;

/** The helper's side: keeps prepared shards and answers questions about them. Returns what takes its messages. */
export function serveCrews(
  catalogue: ReadonlyMap<string, CellKind>,
  post: (message: FromHelper) => void,
): (message: ToHelper) => void {
  const crews = new Map<number, Map<number, Answer>>();
  /** A shard that could not be prepared answers with why. */
  const faults = new Map<number, string>();
  const prepare = ({ crew, kind, work, place, shard }: Extract<ToHelper, { to: 'prepare' }>): void => {
    const make = catalogue.get(kind)?.crews?.[work];
    if (!make) throw new Error(`the kind ${kind} has no work named ${work}`);
    const shards = crews.get(crew) ?? new Map<number, Answer>();
    crews.set(crew, shards.set(place, make(shard as never)));
  };
  return (message) => {
    const { crew } = message;
    try {
      if (message.to === 'prepare') prepare(message);
      else if (message.to === 'dismiss') {
        crews.delete(crew);
        faults.delete(crew);
      } else {
        const fault = faults.get(crew);
        if (fault !== undefined) throw new Error(fault);
        const shards = [...(crews.get(crew) ?? [])];
        const parts = shards.map(([place, answer]) => ({ place, part: answer(message.question as never) }));
        post({ crew, ask: message.ask, parts });
      }
    } catch (cause) {
      const fault = cause instanceof Error ? cause.message : String(cause);
      if (message.to === 'answer') post({ crew, ask: message.ask, fault });
      else faults.set(crew, fault);
    }
  };
}
