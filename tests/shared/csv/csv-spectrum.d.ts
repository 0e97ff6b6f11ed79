declare module 'csv-spectrum' {
  interface Sample {
    readonly name: string;
    readonly csv: Buffer;
    readonly json: Buffer;
  }
  const load: (done: (error: Error | null, samples: readonly Sample[]) => void) => void;
  export = load;
}
