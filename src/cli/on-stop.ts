const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Does something at once when the process is told to stop, which then stops as it would have. Returns what calls it off.
 * `clean` must be done when it returns: nothing that waits would be heard any more.
 */
export function onStop(clean: () => void): () => void {
  const off = (): void => {
    for (const signal of SIGNALS) process.off(signal, stop);
  };
  const stop = (signal: NodeJS.Signals): void => {
    off();
    try {
      clean();
    } finally {
      process.kill(process.pid, signal);
    }
  };
  for (const signal of SIGNALS) process.on(signal, stop);
  return off;
}
