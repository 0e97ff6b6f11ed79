import type { NodeId, NodeSpec } from './node.ts';

/** What is known of a graph before anything runs. */
export interface Plan {
  /** Every node that can run, each after all it reads; nodes of one level stand in the order they were given. */
  readonly order: readonly NodeId[];
  /** 0 for a node that reads nothing, else one more than the highest level it reads. */
  readonly levels: ReadonlyMap<NodeId, number>;
  readonly readers: ReadonlyMap<NodeId, readonly NodeId[]>;
  /** For each node that lies on a cycle: a path from it back to itself, along what reads what. */
  readonly cycles: ReadonlyMap<NodeId, readonly NodeId[]>;
  /** For each node that reads one which does not exist: the first such name. */
  readonly missing: ReadonlyMap<NodeId, NodeId>;
}

type Specs = readonly Pick<NodeSpec<unknown>, 'id' | 'reads'>[];

/** Kahn's order by levels; what never becomes free lies on a cycle or reads one. */
export function planOf(specs: Specs): Plan {
  const byId = new Map(specs.map((spec) => [spec.id, spec]));
  const readers = new Map<NodeId, NodeId[]>(specs.map(({ id }) => [id, []]));
  const missing = new Map<NodeId, NodeId>();
  const open = new Map<NodeId, number>();
  for (const { id, reads } of specs) {
    const known = new Set<NodeId>();
    for (const { node } of reads) {
      if (byId.has(node)) known.add(node);
      else if (!missing.has(id)) missing.set(id, node);
    }
    for (const node of known) readers.get(node)?.push(id);
    open.set(id, known.size);
  }
  const { order, levels } = walk(specs, readers, open);
  const stuck = specs.filter(({ id }) => !levels.has(id));
  const cycles = stuck.length === 0 ? new Map<NodeId, readonly NodeId[]>() : cyclesAmong(stuck);
  return { order: [...order, ...inReadingOrder(stuck, cycles)], levels, readers, cycles, missing };
}

function walk(
  specs: Specs,
  readers: ReadonlyMap<NodeId, readonly NodeId[]>,
  open: Map<NodeId, number>,
): { order: NodeId[]; levels: Map<NodeId, number> } {
  const order: NodeId[] = [];
  const levels = new Map<NodeId, number>();
  const position = new Map(specs.map(({ id }, at) => [id, at]));
  let wave = specs.filter(({ id }) => open.get(id) === 0).map(({ id }) => id);
  for (let level = 0; wave.length > 0; level++) {
    const next: NodeId[] = [];
    for (const id of wave) {
      order.push(id);
      levels.set(id, level);
      for (const reader of readers.get(id) ?? []) {
        const left = (open.get(reader) ?? 0) - 1;
        open.set(reader, left);
        if (left === 0) next.push(reader);
      }
    }
    wave = next.sort((a, b) => (position.get(a) ?? 0) - (position.get(b) ?? 0));
  }
  return { order, levels };
}

/** The shortest way back for every node on a cycle (breadth first along the reads). */
function cyclesAmong(stuck: Specs): Map<NodeId, readonly NodeId[]> {
  const among = new Map(stuck.map((spec) => [spec.id, spec]));
  const cycles = new Map<NodeId, readonly NodeId[]>();
  for (const { id } of stuck) {
    if (cycles.has(id)) continue;
    const path = wayBack(id, among);
    if (!path) continue;
    // Every node on this path lies on the same cycle: turn the ring so that it starts with each of them.
    const ring = path.slice(0, -1);
    ring.forEach((start, at) => {
      if (!cycles.has(start)) cycles.set(start, [...ring.slice(at), ...ring.slice(0, at), start]);
    });
  }
  return cycles;
}

function wayBack(start: NodeId, among: ReadonlyMap<NodeId, Specs[number]>): NodeId[] | undefined {
  const cameFrom = new Map<NodeId, NodeId>();
  const queue: NodeId[] = [start];
  for (let at = 0; at < queue.length; at++) {
    const here = queue[at];
    for (const { node } of among.get(here)?.reads ?? []) {
      if (node === start) {
        const path = [start];
        for (let step = here; step !== start; step = cameFrom.get(step) as NodeId) path.push(step);
        return [start, ...path.slice(1).reverse(), start];
      }
      if (among.has(node) && !cameFrom.has(node)) {
        cameFrom.set(node, here);
        queue.push(node);
      }
    }
  }
  return undefined;
}

/** Stuck nodes, those on cycles first, then their readers, each after what it reads. */
function inReadingOrder(stuck: Specs, cycles: ReadonlyMap<NodeId, unknown>): NodeId[] {
  const placed = new Set(stuck.filter(({ id }) => cycles.has(id)).map(({ id }) => id));
  const among = new Set(stuck.map(({ id }) => id));
  let rest = stuck.filter(({ id }) => !placed.has(id));
  while (rest.length > 0) {
    const free = rest.filter(({ reads }) => reads.every(({ node }) => !among.has(node) || placed.has(node)));
    for (const { id } of free) placed.add(id);
    rest = rest.filter(({ id }) => !placed.has(id));
  }
  return [...placed];
}
