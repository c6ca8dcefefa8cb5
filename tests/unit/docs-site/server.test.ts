import type { Server } from 'node:http';
import { afterEach, expect, test } from 'vitest';
import { serve, serveNear } from '../../../docs-site/src/server.js';

const open: Server[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await new Promise((done) => server.close(done));
});

test('serves the page, on this machine, and nothing else', async () => {
  const { server, address } = await serve('<p>whale</p>', 0);
  open.push(server);
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const answer = await fetch(address);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(await answer.text()).toBe('<p>whale</p>');
  expect(await (await fetch(address, { method: 'HEAD' })).text()).toBe('');
  expect((await fetch(`${address}elsewhere`)).status).toBe(404);
  expect((await fetch(address, { method: 'POST' })).status).toBe(405);
});

test('a taken port: says so and takes the next; refuses when none is left to try', async () => {
  const { server, address } = await serve('first', 0);
  open.push(server);
  const port = Number(new URL(address).port);
  const lines: string[] = [];
  const second = await serveNear('second', port, (line) => lines.push(line));
  open.push(second.server);
  expect(lines[0]).toBe(`Port ${port} is taken; trying ${port + 1}.`);
  expect(await (await fetch(second.address)).text()).toBe('second');
  await expect(serveNear('third', port, () => {}, 1)).rejects.toThrow('EADDRINUSE');
});
