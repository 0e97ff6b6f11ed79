import { createServer, type Server } from 'node:http';
import sirv from 'sirv';
import * as say from '../../shared/messages/command.ts';
import { CommandError } from './command-error.ts';
import { codeOf } from './file-source.ts';

/** What the page may do; index.html carries the same in a meta tag, which cannot forbid being framed. */
export const PAGE_POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'";

/** Serves the built page to this machine alone. Resolves when it listens. @throws CommandError where the port cannot be had */
export function servePage(folder: string, port: number): Promise<Server> {
  const files = sirv(folder, {
    etag: true,
    setHeaders(response, path) {
      response.setHeader('X-Content-Type-Options', 'nosniff');
      response.setHeader('Referrer-Policy', 'no-referrer');
      // Only the page itself: a worker takes its policy from its own response, and the tables' verbs are generated code.
      if (path === '/' || path.endsWith('.html'))
        response.setHeader('Content-Security-Policy', `${PAGE_POLICY}; frame-ancestors 'none'`);
    },
  });
  const server = createServer((request, response) =>
    files(request, response, () => {
      response.statusCode = 404;
      response.end('Not found\n');
    }),
  );
  return new Promise((resolve, reject) => {
    server.once('error', (cause) => {
      const code = codeOf(cause);
      reject(new CommandError(code === 'EADDRINUSE' ? say.portTaken(port) : say.portForbidden(port, code)));
    });
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}
