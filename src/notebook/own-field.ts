/** A field's value, undefined where there is none of its own: "constructor" is a name like any other. */
export const ownField = (fields: Readonly<Record<string, unknown>>, name: string): unknown =>
  Object.hasOwn(fields, name) ? fields[name] : undefined;
