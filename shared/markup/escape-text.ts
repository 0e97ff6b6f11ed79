const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text made safe for HTML and SVG, between tags and inside quoted attributes alike. Control characters that XML 1.0
 * forbids are dropped, so that a stray byte in a file cannot break a picture.
 */
export function escapeText(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to drop
      .replaceAll(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '')
      .replaceAll(/[&<>"']/g, (character) => ENTITIES[character])
  );
}
