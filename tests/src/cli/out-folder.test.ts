import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { OutFolder, type StagedText } from '../../../src/cli/out-folder.ts';
import { Desk } from './shell-for-tests.ts';

let desk = new Desk(new Map());
beforeEach(() => {
  desk = new Desk(new Map());
});
afterEach(() => desk.clear());

const text = (name: string, ...pieces: string[]): StagedText => ({ name, pieces: () => pieces });
const broken: StagedText = {
  name: 'late.csv',
  *pieces() {
    yield 'half a file';
    throw new Error('the table ends early');
  },
};

describe('the folder of results', () => {
  test('is made with all folders above it, and holds what was written, in UTF-8 without a mark', async () => {
    const out = await OutFolder.prepare(desk.folder, 'a/b/c');
    await out.write([text('x.csv', 'unit\r\n', 'Köln\r\n'), text('y.json', '{}\n')]);
    expect(desk.contents()).toEqual(['a', 'a/b', 'a/b/c', 'a/b/c/x.csv', 'a/b/c/y.json']);
    expect(readFileSync(join(desk.folder, 'a/b/c/x.csv'))).toEqual(Buffer.from('unit\r\nKöln\r\n', 'utf8'));
  });

  test('replaces files of the same name and keeps the others', async () => {
    mkdirSync(join(desk.folder, 'o'));
    writeFileSync(join(desk.folder, 'o/x.csv'), 'old');
    writeFileSync(join(desk.folder, 'o/mine.txt'), 'mine');
    await (await OutFolder.prepare(desk.folder, 'o')).write([text('x.csv', 'new')]);
    expect(desk.contents()).toEqual(['o', 'o/mine.txt', 'o/x.csv']);
    expect(readFileSync(join(desk.folder, 'o/x.csv'), 'utf8')).toBe('new');
  });

  test('a failure half way leaves everything as it was', async () => {
    mkdirSync(join(desk.folder, 'o'));
    writeFileSync(join(desk.folder, 'o/x.csv'), 'old');
    const out = await OutFolder.prepare(desk.folder, 'o');
    await expect(out.write([text('x.csv', 'new'), broken])).rejects.toThrow(/^o cannot be written to/);
    expect(desk.contents()).toEqual(['o', 'o/x.csv']);
    expect(readFileSync(join(desk.folder, 'o/x.csv'), 'utf8')).toBe('old');
  });

  test('folders made for nothing are removed again', async () => {
    await (await OutFolder.prepare(desk.folder, 'p/q')).discard();
    expect(desk.contents()).toEqual([]);
  });

  test.runIf(process.platform === 'linux')('a folder that the system does not let be made ends at once', async () => {
    await expect(OutFolder.prepare(desk.folder, '/proc/no-such-process/a/b')).rejects.toThrow(
      /^\/proc.*cannot be written/,
    );
  });

  test('a file written early moves into place with the others', async () => {
    const out = await OutFolder.prepare(desk.folder, 'o');
    const path = out.early('0');
    writeFileSync(path, 'early');
    await out.write([text('a.csv', '1'), { ...text('x.csv', 'late'), written: { path, done: Promise.resolve() } }]);
    expect(desk.contents()).toEqual(['o', 'o/a.csv', 'o/x.csv']);
    expect(readFileSync(join(desk.folder, 'o/x.csv'), 'utf8')).toBe('early');
  });

  test('a file that could not be written early leaves everything as it was', async () => {
    const out = await OutFolder.prepare(desk.folder, 'o');
    const done = Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' }));
    done.catch(() => {});
    await expect(out.write([{ ...text('x.csv', 'late'), written: { path: out.early('0'), done } }])).rejects.toThrow(
      /^o cannot be written to/,
    );
    expect(desk.contents()).toEqual([]);
  });

  test('a folder in the place of a file is named, and nothing is written', async () => {
    mkdirSync(join(desk.folder, 'o/x.csv'), { recursive: true });
    const out = await OutFolder.prepare(desk.folder, 'o');
    await expect(out.write([text('a.csv', '1'), text('x.csv', '2')])).rejects.toThrow(/x\.csv/);
    expect(desk.contents()).toEqual(['o', 'o/x.csv']);
  });
});
