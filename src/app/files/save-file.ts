/** Hands a file to the browser's own downloads. */
export function saveFile(name: string, blob: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // The download has its own hold of the bytes once it has begun.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** A title as a file name: letters and digits of any script, dashes between. */
export function notebookFile(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${plain === '' ? 'notebook' : plain}.json`;
}
