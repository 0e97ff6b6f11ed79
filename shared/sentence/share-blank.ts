import type { Blank } from '../cell.ts';
import { shownAmount } from './shown-amount.ts';

/** The blank of a share or a chance: the parameter is 0..1, people read and type per cent. */
export function shareBlank(parameter: string, label: string, value: number, minimum = 0, maximum = 1): Blank {
  return {
    parameter,
    label,
    text: `${shownAmount(value, 100)} %`,
    entry: { kind: 'number', unit: '%', factor: 100, minimum, maximum },
  };
}
