import type { CellKind } from '../../shared/cell.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { compute, type RegisterResult } from './compute.ts';
import { describe } from './describe.ts';
import { type RegisterParameters, readParameters } from './parameters.ts';

export const kind: CellKind<RegisterParameters, RegisterResult> = {
  name: 'register',
  title: 'Register',
  purpose: 'Says what each unit is, what it is set to, what it must hold, and when it is due.',
  readParameters,
  reads: () => [],
  sources: ({ files }) => files,
  sentence: ({ files }) => ['The units are those of ', fileList(files), '.'],
  compute,
  describe,
};
