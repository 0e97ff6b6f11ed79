import type { Blank } from '../cell.ts';
import { shownAmount } from './shown-amount.ts';

interface Range {
  /** '' for none; whole words ("days") lose their s beside 1. */
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
}

/** The blank of a number, shown with its unit. */
export function numberBlank(parameter: string, label: string, value: number, range: Range): Blank {
  const unit = value === 1 ? range.unit.replace(/^([a-z]{3,})s$/, '$1') : range.unit;
  return { parameter, label, text: `${shownAmount(value)} ${unit}`.trim(), entry: { kind: 'number', ...range } };
}
