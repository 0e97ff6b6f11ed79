import type { Source } from '../../shared/sources/source.ts';

const rooms = import.meta.glob<Record<string, unknown>>('../../shared/sources/*.ts', { eager: true });

/** Which kinds of cell rely on the entries of which room of the bibliography. */
const KINDS_OF: Readonly<Record<string, readonly string[]>> = {
  readings: ['readings', 'register', 'events', 'fuel-use', 'corrections'],
  combustion: ['derive'],
  fuels: ['derive'],
  statistics: ['drift', 'supply', 'instruments', 'backcheck'],
  foresight: ['drift', 'supply', 'instruments', 'backcheck'],
  drift: ['drift'],
  supply: ['supply'],
  instruments: ['instruments'],
  safety: ['raise'],
  savings: ['savings'],
};

/** Short forms of the sources that a kind of cell relies on, each once, in the rooms' order. */
export function methodSources(kind: string): string[] {
  const shorts = Object.entries(rooms)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .filter(([path]) => KINDS_OF[roomOf(path)]?.includes(kind))
    .flatMap(([, module]) => Object.values(module))
    .flatMap((list) => Object.values((list ?? {}) as Readonly<Record<string, Source>>))
    .map((source) => source?.short)
    .filter((short) => typeof short === 'string');
  return [...new Set(shorts)];
}

/** Short form of one entry by its key, '' where no room has it. */
export function sourceNamed(key: string): string {
  for (const module of Object.values(rooms))
    for (const list of Object.values(module)) {
      const source = (list as Readonly<Record<string, Source | undefined>> | undefined)?.[key];
      if (typeof source?.short === 'string') return source.short;
    }
  return '';
}

const roomOf = (path: string): string => /([^/]+)\.ts$/.exec(path)?.[1] ?? '';
