import fc from 'fast-check';
import { expect, test } from 'vitest';
import { escapeText } from '../../../shared/markup/escape-text.ts';
import { markup, trusted } from '../../../shared/markup/markup.ts';

test('values are escaped, markup and lists of it are not', () => {
  const items = ['<a>', 'b & c'].map((item) => markup`<li>${item}</li>`);
  expect(markup`<ul class="${'"x"'}">${items}</ul>${trusted('<hr>')}`.text).toBe(
    '<ul class="&quot;x&quot;"><li>&lt;a&gt;</li><li>b &amp; c</li></ul><hr>',
  );
});

test('whatever the text, nothing is left that opens a tag, an entity or an attribute', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const escaped = escapeText(text);
      expect(escaped).not.toMatch(/[<>"']/);
      expect(escaped.replaceAll(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
    }),
    { seed: 7, numRuns: 200 },
  );
});
