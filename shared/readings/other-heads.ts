import type { FilePlan, Section } from './mapping.ts';

/** The other head lines of a file, each of their kinds once, with what its columns were taken for ('' for no readings). */
export function otherHeads({
  file,
  sections = [],
}: FilePlan): { readonly file: string; readonly line: number; readonly times: number; readonly columns: string }[] {
  const kinds = new Map<FilePlan | Section, Section[]>();
  for (const section of sections) {
    if (section.own) continue;
    const kind = section.plan ?? section;
    kinds.set(kind, [...(kinds.get(kind) ?? []), section]);
  }
  return [...kinds.values()].map((alike) => ({
    file,
    line: alike[0].line,
    times: alike.length,
    columns: (alike[0].plan?.columns ?? [])
      .filter(({ field }) => field !== '')
      .map(({ head, field }) => `"${head.trim()}" is ${field}`)
      .join(', '),
  }));
}
