/** JSON with keys in code-unit order: the same value always gives the same text. For keys and comparisons, not for files. */
export function canonicalJson(value: unknown): string {
  return (
    JSON.stringify(value, (_, item: unknown) =>
      typeof item === 'object' && item !== null && !Array.isArray(item)
        ? Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)))
        : item,
    ) ?? 'null'
  );
}
