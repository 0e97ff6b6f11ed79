import type { AnswerEntry, NamedAnswer } from './outcome.ts';

/**
 * What a parameter becomes by an answer: the answer's word itself, or, where the answer is a named entry, the list with
 * that entry in place of the one of the same name, else in front, since the first that fits is used.
 */
export function answerValue(held: unknown, word: string, answer: NamedAnswer | undefined): unknown {
  if (!answer) return word;
  const entries = Array.isArray(held) ? held : [];
  const at = entries.findIndex((entry) => (entry as Partial<NamedAnswer> | null)?.name === answer.name);
  return at < 0 ? [answer, ...entries] : entries.map((entry, index) => (index === at ? answer : entry));
}

/** The answer with the typed word where its path leads. */
export function answerWith({ answer, path }: Pick<AnswerEntry, 'answer' | 'path'>, word: string): NamedAnswer {
  const put = (into: unknown, [key, ...rest]: readonly string[]): unknown => {
    if (key === undefined) return word;
    const record = typeof into === 'object' && into !== null ? into : {};
    const inner = Object.hasOwn(record, key) ? (record as Record<string, unknown>)[key] : undefined;
    return { ...record, [key]: put(inner, rest) };
  };
  return put(answer, path) as NamedAnswer;
}
