const SIGNATURES: readonly (readonly [bytes: readonly number[], what: string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], 'a ZIP archive (an .xlsx workbook is one too)'],
  [[0x50, 0x4b, 0x05, 0x06], 'an empty ZIP archive'],
  [[0x1f, 0x8b], 'gzip-compressed data'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'a workbook or document in an old binary format'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF document'],
  [[0x89, 0x50, 0x4e, 0x47], 'a PNG picture'],
  [[0xff, 0xd8, 0xff], 'a JPEG picture'],
  [[0x7f, 0x45, 0x4c, 0x46], 'a program'],
  [[0x4d, 0x5a, 0x90], 'a program'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'a 7z archive'],
  [[0x52, 0x61, 0x72, 0x21], 'a RAR archive'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'a database'],
  [[0x50, 0x41, 0x52, 0x31], 'a Parquet table'],
];

/** What a file that is no text is, by its first bytes; undefined where no signature is known. */
export function binaryKind(head: Uint8Array): string | undefined {
  return SIGNATURES.find(([bytes]) => bytes.every((byte, i) => head[i] === byte))?.[1];
}
