const GREEK: Readonly<Record<string, string>> = { λ: 'lambda', η: 'eta', Δ: 'delta', δ: 'delta', µ: 'u', μ: 'u' };

/**
 * Text as heads and words are compared: lower case, without accents, Greek letters by name, everything that is neither
 * letter nor digit a single space. 'O₂-Gehalt (trocken)' becomes 'o2 gehalt trocken'.
 */
export function plainWords(text: string): string {
  return text
    .replace(/[ληΔδµμ]/g, (letter) => ` ${GREEK[letter]} `)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
