import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { catalogue } from '../../cells/catalogue.ts';
import { runCommand } from './run-command.ts';

/** Both src/cli/main.ts and dist/cli/main.js lie two folders below the project's own. */
const home = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

// A reader that has seen enough (`| head`) is no fault.
process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
  if (cause.code !== 'EPIPE') throw cause;
});

process.exitCode = await runCommand(process.argv.slice(2), {
  catalogue,
  folder: process.cwd(),
  home,
  width: process.stdout.columns ?? 100,
  environment: process.env,
  today,
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
});
