/** What a calculation came to: a value, an error (one sentence), or a question that only the user can answer. */
export type Outcome<T> =
  | { readonly status: 'value'; readonly value: T }
  | { readonly status: 'error'; readonly message: string }
  | { readonly status: 'question'; readonly question: Question };

/** A question that the data does not settle. It names where it arose and the command-line flag that answers it. */
export interface Question {
  /** One sentence: where, what is open, what was found. */
  readonly message: string;
  /** What to do: the flag or the parameter that answers it. */
  readonly remedy: string;
  /** The parameter of the asking cell that holds the answer. */
  readonly parameter: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export const succeed = <T>(value: T): Outcome<T> => ({ status: 'value', value });
export const fail = (message: string): Outcome<never> => ({ status: 'error', message });
export const ask = (question: Question): Outcome<never> => ({ status: 'question', question });
