import type { Outcome } from '../../shared/outcome.ts';
import { fingerprint } from './fingerprint.ts';
import type { NodeId, Versions } from './node.ts';

const MOST_REMEMBERED = 100_000;

export interface StoredOutcome<Value> {
  readonly node: NodeId;
  readonly outcome: Outcome<Value>;
  readonly versions: Versions;
}

/** What the store holds and what it has let go, for people who wonder why an undo calculated. */
export interface StoreAccount {
  readonly results: number;
  readonly bytes: number;
  readonly limitBytes: number;
  /** Results let go since the start, by node. */
  readonly letGo: ReadonlyMap<NodeId, number>;
}

/**
 * Results by the key of their parameters and inputs, bounded in bytes and number; the one unused for longest goes first.
 * A buffer that several results share counts once.
 */
export class ResultStore<Value> {
  readonly #limitBytes: number;
  readonly #limitResults: number;
  readonly #entries = new Map<string, { stored: StoredOutcome<Value>; buffers: readonly ArrayBufferLike[] }>();
  readonly #uses = new Map<ArrayBufferLike, number>();
  readonly #letGo = new Map<NodeId, number>();
  /** Fingerprints of the keys let go, as far as they are remembered. */
  readonly #gone = new Set<string>();
  #bytes = 0;

  constructor(limitBytes: number, limitResults: number) {
    this.#limitBytes = limitBytes;
    this.#limitResults = limitResults;
  }

  get(key: string): StoredOutcome<Value> | undefined {
    const entry = this.#entries.get(key);
    if (!entry) return undefined;
    this.#entries.delete(key);
    this.#entries.set(key, entry);
    return entry.stored;
  }

  put(key: string, stored: StoredOutcome<Value>): void {
    this.#drop(key);
    const buffers = stored.outcome.status === 'value' ? listBuffers(stored.outcome.value) : [];
    this.#entries.set(key, { stored, buffers });
    for (const buffer of buffers) {
      const uses = this.#uses.get(buffer) ?? 0;
      if (uses === 0) this.#bytes += buffer.byteLength;
      this.#uses.set(buffer, uses + 1);
    }
    for (const oldest of this.#entries.keys()) {
      if (oldest === key || (this.#bytes <= this.#limitBytes && this.#entries.size <= this.#limitResults)) break;
      const node = this.#drop(oldest);
      if (node === undefined) continue;
      this.#letGo.set(node, (this.#letGo.get(node) ?? 0) + 1);
      if (this.#gone.size < MOST_REMEMBERED) this.#gone.add(fingerprint(oldest));
    }
  }

  /** Whether a result of this key was kept once and had to go. */
  hasLetGo(key: string): boolean {
    return this.#gone.size > 0 && this.#gone.has(fingerprint(key));
  }

  account(): StoreAccount {
    return {
      results: this.#entries.size,
      bytes: this.#bytes,
      limitBytes: this.#limitBytes,
      letGo: new Map(this.#letGo),
    };
  }

  #drop(key: string): NodeId | undefined {
    const entry = this.#entries.get(key);
    if (!entry) return undefined;
    this.#entries.delete(key);
    for (const buffer of entry.buffers) {
      const uses = (this.#uses.get(buffer) ?? 1) - 1;
      if (uses > 0) this.#uses.set(buffer, uses);
      else {
        this.#uses.delete(buffer);
        this.#bytes -= buffer.byteLength;
      }
    }
    return entry.stored.node;
  }
}

const listBuffers = (value: unknown): readonly ArrayBufferLike[] =>
  typeof value === 'object' ? [...buffersOf(value)] : [];

/** The array buffers below a plain value; small things (texts, numbers) are not counted. */
function buffersOf(value: unknown, found = new Set<ArrayBufferLike>(), depth = 0): Set<ArrayBufferLike> {
  if (typeof value !== 'object' || value === null || depth > 6) return found;
  if (ArrayBuffer.isView(value)) found.add(value.buffer);
  else if (value instanceof Map) for (const item of value.values()) buffersOf(item, found, depth + 1);
  else if (Array.isArray(value)) {
    // A list of plain texts or numbers has no buffers below it.
    if (typeof value[0] === 'object') for (const item of value) buffersOf(item, found, depth + 1);
  } else for (const item of Object.values(value)) buffersOf(item, found, depth + 1);
  return found;
}
