/**
 * One order of all names that keeps the order of both lists; names that neither list puts before the other stand by code
 * unit. Undefined where the lists contradict each other. The same whichever list comes first.
 */
export function mergeOrder(first: readonly string[], second: readonly string[]): string[] | undefined {
  const names = [...new Set([...first, ...second])].sort();
  const after = new Map<string, Set<string>>(names.map((name) => [name, new Set()]));
  const open = new Map<string, number>(names.map((name) => [name, 0]));
  for (const list of [first, second])
    for (let at = 1; at < list.length; at++) {
      const followers = after.get(list[at - 1]) as Set<string>;
      if (followers.has(list[at])) continue;
      followers.add(list[at]);
      open.set(list[at], (open.get(list[at]) as number) + 1);
    }
  const merged: string[] = [];
  const free = names.filter((name) => open.get(name) === 0);
  while (free.length > 0) {
    const name = free.shift() as string;
    merged.push(name);
    for (const follower of after.get(name) as Set<string>) {
      const left = (open.get(follower) as number) - 1;
      open.set(follower, left);
      if (left === 0) free.splice(insertionIndex(free, follower), 0, follower);
    }
  }
  return merged.length === names.length ? merged : undefined;
}

function insertionIndex(sorted: readonly string[], name: string): number {
  const at = sorted.findIndex((other) => other > name);
  return at < 0 ? sorted.length : at;
}
