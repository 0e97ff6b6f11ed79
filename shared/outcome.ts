/** What a calculation came to: a value, an error (one sentence), or a question that only the user can answer. */
export type Outcome<T> =
  | { readonly status: 'value'; readonly value: T }
  | { readonly status: 'error'; readonly message: string }
  | { readonly status: 'question'; readonly question: Question };

/** A question that the data does not settle. It names where it arose and what answers it. */
export interface Question {
  /** One sentence: where, what is open, what was found. */
  readonly message: string;
  /** What to do, in words for the page and the report. */
  readonly remedy: string;
  /** What a command says instead: the option that answers it. */
  readonly byCommand?: string;
  /** The parameter of the asking cell that holds the answer. */
  readonly parameter: string;
  readonly options: readonly AnswerOption[];
  /** Where the answer is a word of the user's own, such as a unit's id. */
  readonly entry?: AnswerEntry;
}

export interface AnswerOption {
  readonly value: string;
  readonly label: string;
  /** Where the parameter is a list of named entries: the entry to put into it, for the one of the same name or else in front. */
  readonly answer?: NamedAnswer;
}

export interface AnswerEntry {
  readonly label: string;
  /** As in an option, but for the typed word, which goes where the path of names leads. */
  readonly answer: NamedAnswer;
  readonly path: readonly string[];
}

export interface NamedAnswer {
  readonly name: string;
  readonly [key: string]: unknown;
}

/** What to do, said to whoever gave a command. */
export const remedyByCommand = ({ remedy, byCommand }: Question): string => byCommand ?? remedy;

export const succeed = <T>(value: T): Outcome<T> => ({ status: 'value', value });
export const fail = (message: string): Outcome<never> => ({ status: 'error', message });
export const ask = (question: Question): Outcome<never> => ({ status: 'question', question });
