import type { Blank } from '../cell.ts';

/** The blank of a parameter that takes one of a few values; a value that is none of them is shown as it stands. */
export function choiceBlank(
  parameter: string,
  label: string,
  value: string,
  options: readonly { readonly value: string; readonly label: string }[],
): Blank {
  const text = options.find((option) => option.value === value)?.label ?? value;
  return { parameter, label, text, entry: { kind: 'choice', options } };
}
