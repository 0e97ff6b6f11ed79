/** Milliseconds since it was started: by the wall clock, and of this process's processors. */
export interface Lap {
  readonly wallMs: number;
  readonly processorMs: number;
  /** The smaller of the two: other programs may share the machine, and garbage is collected on further threads. */
  readonly ms: number;
}

export function stopwatch(): () => Lap {
  const [began, used] = [performance.now(), process.cpuUsage()];
  return () => {
    const wallMs = performance.now() - began;
    const { user, system } = process.cpuUsage(used);
    const processorMs = (user + system) / 1000;
    return { wallMs, processorMs, ms: Math.min(wallMs, processorMs) };
  };
}
