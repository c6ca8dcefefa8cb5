import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

/** Nothing from elsewhere, no script in the page itself: the browser is told to hold the site to it. Code that a reader edits runs from a blob. */
const policy = [
  "default-src 'self'",
  "script-src 'self' blob: 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "base-uri 'none'",
  "form-action 'self'",
].join('; ');

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.xml': 'application/xml',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Serves a folder on this machine only; `port` 0 takes any free one. Rejects when the port is taken. */
export const serve = (folder: string, port: number): Promise<{ server: Server; address: string }> =>
  new Promise((resolve, reject) => {
    const server = createServer(async ({ method, url }, response) => {
      if (method !== 'GET' && method !== 'HEAD') {
        response.writeHead(405, { allow: 'GET, HEAD' }).end();
        return;
      }
      try {
        const { pathname } = new URL(url ?? '/', 'http://localhost');
        const inside = normalize(decodeURIComponent(pathname));
        const file = join(folder, inside.endsWith('/') ? `${inside}index.html` : inside);
        const body = await readFile(file);
        const type = types[extname(file)] ?? 'application/octet-stream';
        response.writeHead(200, {
          'content-type': type,
          'content-security-policy': policy,
          'cache-control': 'no-store',
        });
        response.end(method === 'HEAD' ? undefined : body);
      } catch {
        const page = await readFile(join(folder, '404.html')).catch(() => undefined);
        const type = (page ? types['.html'] : types['.txt']) as string;
        response.writeHead(404, { 'content-type': type, 'content-security-policy': policy });
        response.end(method === 'HEAD' ? undefined : (page ?? 'There is no such page.\n'));
      }
    });
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve({ server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` });
    });
  });

/** The same at the first free port of `tries`, from `port` on; says which were taken. */
export async function serveNear(folder: string, port: number, say: (line: string) => void, tries = 20) {
  for (let at = port; ; at++) {
    try {
      return await serve(folder, at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE' || at + 1 >= Math.min(port + tries, 65536))
        throw error;
      say(`Port ${at} is taken; trying ${at + 1}.`);
    }
  }
}
