import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** Nothing from elsewhere, no script: the browser is told to hold the page to it. */
const headers = {
  'content-type': 'text/html; charset=utf-8',
  'content-security-policy':
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'",
  'cache-control': 'no-store',
} as const;

/** Serves one page at `/` on this machine only; `port` 0 takes any free one. Rejects when the port is taken. */
export const serve = (page: string, port: number): Promise<{ server: Server; address: string }> =>
  new Promise((resolve, reject) => {
    const server = createServer(({ method, url }, response) => {
      if (method !== 'GET' && method !== 'HEAD') return response.writeHead(405, { allow: 'GET, HEAD' }).end();
      if (new URL(url ?? '/', 'http://localhost').pathname !== '/')
        return response.writeHead(404).end('There is one page, at /.\n');
      response.writeHead(200, headers).end(method === 'HEAD' ? undefined : page);
    });
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve({ server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` });
    });
  });

/** The same at the first free port of `tries`, from `port` on; says which were taken. */
export async function serveNear(page: string, port: number, say: (line: string) => void, tries = 20) {
  for (let at = port; ; at++) {
    try {
      return await serve(page, at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE' || at + 1 >= Math.min(port + tries, 65536))
        throw error;
      say(`Port ${at} is taken; trying ${at + 1}.`);
    }
  }
}
