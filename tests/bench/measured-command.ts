import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '../..');
const POLL_MS = 20;

export interface Measured {
  readonly code: number;
  readonly seconds: number;
  /** Processor time, all threads; NaN where the system does not tell. */
  readonly processorSeconds: number;
  /** Highest resident memory, MB; NaN where the system does not tell. */
  readonly megabytes: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command line as a process of its own and watches its time and memory. */
export function measureCommand(words: readonly string[], folder: string): Promise<Measured> {
  return new Promise((resolve) => {
    const began = performance.now();
    const child = spawn(process.execPath, [join(ROOT, 'dist/cli/main.js'), ...words], { cwd: folder });
    let megabytes = Number.NaN;
    let processorSeconds = Number.NaN;
    let [out, err] = ['', ''];
    child.stdout.on('data', (piece) => {
      out += piece;
    });
    child.stderr.on('data', (piece) => {
      err += piece;
    });
    const watch = setInterval(() => {
      megabytes = peakOf(child.pid) ?? megabytes;
      processorSeconds = processorOf(child.pid) ?? processorSeconds;
    }, POLL_MS);
    child.on('close', (code) => {
      clearInterval(watch);
      const seconds = (performance.now() - began) / 1000;
      resolve({ code: code ?? -1, seconds, processorSeconds, megabytes, out, err });
    });
  });
}

function peakOf(pid: number | undefined): number | undefined {
  try {
    const [, kilobytes] = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1000;
  } catch {
    return undefined;
  }
}

/** Clock ticks of user and system time, of which Linux counts 100 a second. */
function processorOf(pid: number | undefined): number | undefined {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return undefined;
  }
}
