/** A file of a folder bears its path within it, so that two files of one name in two folders stay two files. */
const underPath = (file: File, path: string): File =>
  new File([file], path, { type: file.type, lastModified: file.lastModified });

/** Files that a folder chooser gave, under their paths. */
export const chosenOfFolder = (files: Iterable<File>): File[] =>
  [...files].map((file) => underPath(file, file.webkitRelativePath || file.name));

/** What was dropped: files, and all files of folders and of what is in them. To be called while the event is handled. */
export function droppedFiles(transfer: DataTransfer): Promise<File[]> {
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  const plain = [...transfer.files];
  // Where nothing is a folder, the browser's own list is the whole of it.
  return entries.some(({ isDirectory }) => isDirectory)
    ? Promise.all(entries.map(filesOf)).then((found) => found.flat())
    : Promise.resolve(plain);
}

async function filesOf(entry: FileSystemEntry): Promise<File[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));
    const path = entry.fullPath.replace(/^\//, '');
    return [path === file.name ? file : underPath(file, path)];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const files: File[] = [];
  for (;;) {
    // A reader gives a folder in parts; an empty one is the end.
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (part.length === 0) return files;
    for (const inner of part) files.push(...(await filesOf(inner)));
  }
}

const TABLES = /\.(?:csv|txt|tsv|json|asc|dat|log)$/i;

/** Files of a folder that can be tables or notebooks; what else lies in it is counted, hidden files are not. */
export function tablesAmong(files: Iterable<File>): { readonly tables: File[]; readonly others: string[] } {
  const tables: File[] = [];
  const others: string[] = [];
  for (const file of files) {
    const name = file.name.split('/').at(-1) ?? file.name;
    const isOfFolder = file.name.includes('/');
    if (!isOfFolder || TABLES.test(name)) tables.push(file);
    else if (!/^[.~]/.test(name)) others.push(file.name);
  }
  return { tables, others };
}
