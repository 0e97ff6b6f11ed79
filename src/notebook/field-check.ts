import * as say from '../../shared/messages/notebook.ts';

/** Thrown inside the reading of a document and caught at its door. */
export class FieldError extends Error {}

/** Checks of single fields that name file and path in what they throw. */
export interface FieldCheck {
  object(value: unknown, path: string): Readonly<Record<string, unknown>>;
  list(value: unknown, path: string): readonly unknown[];
  text(value: unknown, path: string, pattern?: RegExp, wanted?: string): string;
  count(value: unknown, path: string, most?: number): number;
  wrong(path: string, wanted: string, found: unknown): FieldError;
}

export function fieldCheck(file: string): FieldCheck {
  const wrong = (path: string, wanted: string, found: unknown): FieldError =>
    new FieldError(say.badField(file, path, wanted, shown(found)));
  return {
    wrong,
    object(value, path) {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) throw wrong(path, 'an object', value);
      return value as Readonly<Record<string, unknown>>;
    },
    list(value, path) {
      if (!Array.isArray(value)) throw wrong(path, 'a list', value);
      return value;
    },
    text(value, path, pattern, wanted = 'a text') {
      if (typeof value !== 'string' || (pattern && !pattern.test(value))) throw wrong(path, wanted, value);
      return value;
    },
    count(value, path, most = Number.MAX_SAFE_INTEGER) {
      if (!Number.isInteger(value) || (value as number) < 0 || (value as number) > most)
        throw wrong(path, `a whole number from 0 to ${most}`, value);
      return value as number;
    },
  };
}

function shown(found: unknown): string {
  if (found === undefined) return 'missing';
  return typeof found === 'string' ? found : JSON.stringify(found);
}
