import { createReadStream, statSync } from 'node:fs';
import Papa from 'papaparse';
import { kind } from '../../cells/readings/kind.ts';
import type { SourceFile } from '../../shared/cell.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import type { Table } from '../../shared/table/table.ts';
import { yieldTurn } from '../../src/engine/yield-turn.ts';

/**
 * One process of the import bench, built as the command line is built. `node --expose-gc import-run.js FILE WHAT...`
 * does each WHAT in turn ('own' imports the file, 'peer' reads it with PapaParse into nothing) and prints a line of JSON.
 */
const CHUNK_BYTES = 256 * 1024;
const POLL_MS = 10;

/** PapaParse's own streamed read, every row dropped. */
function peer(path: string): Promise<void> {
  return new Promise((resolve, reject) => {
    Papa.parse(createReadStream(path, { encoding: 'utf8', highWaterMark: CHUNK_BYTES }), {
      chunk: () => {},
      complete: () => resolve(),
      error: reject,
    });
  });
}

async function own(path: string): Promise<Table> {
  const file: SourceFile = {
    name: 'readings.csv',
    size: statSync(path).size,
    hash: '',
    open: () => createReadStream(path, { highWaterMark: CHUNK_BYTES }),
  };
  const parameters = kind.readParameters({ files: [file.name], register: '' });
  if (parameters.status !== 'value') throw new Error('parameters');
  const done = await kind.compute(
    parameters.value,
    new Map(),
    {
      asOf: readIsoDate('2026-12-31'),
      seed: 1,
      signal: new AbortController().signal,
      source: () => file,
      progress: () => {},
      pause: yieldTurn,
    },
    undefined,
  );
  if (done.status !== 'value') throw new Error(JSON.stringify(done));
  return done.value.tables['accepted'];
}

/** Bytes of typed arrays, each once, and of the texts. */
function bytesOf(table: Table): number {
  const buffers = new Set<ArrayBufferLike>();
  let texts = 0;
  for (const column of table.columns.values()) {
    buffers.add(column.kind === 'text' ? column.codes.buffer : column.values.buffer);
    if (column.kind === 'number' && column.bounds) buffers.add(column.bounds.buffer);
    if (column.kind === 'text') for (const level of column.levels) texts += 24 + level.length;
  }
  return [...buffers].reduce((sum, { byteLength }) => sum + byteLength, texts);
}

async function measure(what: string, path: string): Promise<void> {
  globalThis.gc?.();
  const before = process.memoryUsage.rss();
  let peak = before;
  const look = (): void => {
    peak = Math.max(peak, process.memoryUsage.rss());
  };
  const watch = setInterval(look, POLL_MS);
  const processor = process.cpuUsage();
  const began = performance.now();
  const table = what === 'own' ? await own(path) : await peer(path);
  const seconds = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage(processor);
  look();
  clearInterval(watch);
  const rows = table?.rows ?? 0;
  const columns = table ? bytesOf(table) : 0;
  const processorSeconds = (user + system) / 1e6;
  console.log(JSON.stringify({ what, seconds, processorSeconds, rows, columns, grown: peak - before }));
}

const [path = '', ...whats] = process.argv.slice(2);
for (const what of whats) await measure(what, path);
