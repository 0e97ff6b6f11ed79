/**
 * Which kept notebooks are open in some tab, told by the browser's own locks: a tab that is closed, reloaded or has
 * crashed holds none. Where a browser has no locks, nothing counts as open elsewhere.
 */
const nameOf = (id: string): string => `between-visits ${id}`;

/** Holds the notebook for this tab. Gives back how to let it go. */
export function holdNotebook(id: string): () => void {
  let release = (): void => {};
  const until = new Promise<void>((resolve) => {
    release = resolve;
  });
  void globalThis.navigator?.locks?.request(nameOf(id), () => until);
  return release;
}

export async function notebooksHeld(): Promise<(id: string) => boolean> {
  const { held = [] } = (await globalThis.navigator?.locks?.query()) ?? {};
  const names = new Set(held.map(({ name }) => name));
  return (id) => names.has(nameOf(id));
}
