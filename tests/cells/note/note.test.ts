import { expect, test } from 'vitest';
import { kind } from '../../../cells/note/kind.ts';

test('a note answers with its own words, and an empty one says that it is', async () => {
  expect(kind.describe({ text: 'Panel off.', tables: {} }).answer).toBe('Panel off.');
  expect(kind.describe({ text: ' \n', tables: {} }).answer).toBe('Nothing noted yet.');
  expect(kind.sentence({ text: '' })).toMatchObject([{ parameter: 'text', text: 'write here' }]);
});

test('anything but text is refused in one sentence', () => {
  expect(kind.readParameters({ text: 5 })).toEqual({
    status: 'error',
    message: 'note: a note holds text, it is 5; give it as text.',
  });
});
