/** One line of a delimited file: a field is quoted only where RFC 4180 asks for it. */
export function csvLine(fields: readonly string[], delimiter: string): string {
  const quote = (field: string): string =>
    field.includes(delimiter) || /["\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
  return fields.map(quote).join(delimiter);
}
