/** A piece of a written formula: plain text, or a symbol with what stands below its line. */
export type SymbolPart = string | { readonly symbol: string; readonly index: string };

/** A comma without a space behind it parts a symbol from its index: "O2,air". Commas between arguments have a space. */
const SYMBOL = /([\p{L}\p{N}/]+,[\p{L}\p{N}.,→]*[\p{L}\p{N}])/u;

/** A formula of a working in pieces, so that whoever draws it can set indices below the line. */
export function symbolParts(formula: string): readonly SymbolPart[] {
  return formula.split(SYMBOL).flatMap((part, i): SymbolPart[] => {
    if (i % 2 === 0) return part === '' ? [] : [part];
    const at = part.indexOf(',');
    return [{ symbol: part.slice(0, at), index: part.slice(at + 1) }];
  });
}
