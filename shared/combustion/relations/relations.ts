import { AIR_RELATIONS } from './air-relations.ts';
import { EMISSION_RELATIONS } from './emission-relations.ts';
import { LOSS_RELATIONS } from './loss-relations.ts';
import { REFERENCE_RELATIONS } from './reference-relations.ts';
import type { Relation } from './relation.ts';

/** Every built-in derivation, in the order of the handbook. */
export const RELATIONS: readonly Relation[] = [
  ...AIR_RELATIONS,
  ...EMISSION_RELATIONS,
  ...LOSS_RELATIONS,
  ...REFERENCE_RELATIONS,
];
