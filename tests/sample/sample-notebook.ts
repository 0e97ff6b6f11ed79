import { createHash } from 'node:crypto';
import { makeSample } from '../../sample-data/make-sample.ts';
import type { SourceFile } from '../../shared/cell.ts';
import { campusReview } from '../../src/notebook/campus-review.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';

const READINGS = ['readings-crew-one.csv', 'readings-crew-two.csv'];
const NAMES = ['register.csv', 'events.csv', 'fuel-use.csv', ...READINGS];

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The sample's files as a host hands them to a notebook, by the keys that the starting notebook uses. */
export function sampleFiles(): ReadonlyMap<string, SourceFile> {
  const files = makeSample();
  return new Map(
    NAMES.map((name) => {
      const bytes = files.get(name) ?? new Uint8Array();
      const open = async function* (): AsyncGenerator<Uint8Array> {
        yield bytes;
      };
      return [name, { name, size: bytes.length, hash: hash(bytes), open }];
    }),
  );
}

/** The notebook that a newcomer sees first: the review of the sample campus as of 2026-11-15. */
export function sampleNotebook(): NotebookDocument {
  const data = [...sampleFiles()].map(([key, { name, size, hash }]) => ({ key, name, size, hash }));
  return campusReview({
    title: 'Quillmere campus, November 2026',
    asOf: '2026-11-15',
    data,
    readings: READINGS,
    register: ['register.csv'],
    events: ['events.csv'],
    fuelUse: ['fuel-use.csv'],
  });
}
