/** The library brings no types; this is what the tests use of it. */
declare module '@lhncbc/ucum-lhc' {
  interface Conversion {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
    readonly msg: readonly string[];
  }
  export const UcumLhcUtils: {
    getInstance(): { convertUnitTo(from: string, value: number, to: string): Conversion };
  };
}
