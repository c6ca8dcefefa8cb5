import { mkdtempSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { serve, serveNear } from '../../../docs-site/src/server.js';

const open: Server[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await new Promise((done) => server.close(done));
});

function folderWith(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'airspring-site-'));
  writeFileSync(join(folder, 'index.html'), text);
  return folder;
}

test('serves the folder, on this machine, and nothing else', async () => {
  const { server, address } = await serve(folderWith('<p>whale</p>'), 0);
  open.push(server);
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const answer = await fetch(address);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
  expect(await answer.text()).toBe('<p>whale</p>');
  expect(await (await fetch(address, { method: 'HEAD' })).text()).toBe('');
  expect((await fetch(`${address}elsewhere`)).status).toBe(404);
  expect((await fetch(address, { method: 'POST' })).status).toBe(405);
  for (const outside of ['..%2f..%2fetc%2fpasswd', '%2e%2e/%2e%2e/etc/passwd', '%', '..%5c..%5cetc%5cpasswd']) {
    expect((await fetch(`${address}${outside}`)).status, outside).toBe(404);
  }
});

test('a wrong address gives the page for that, with its status', async () => {
  const folder = folderWith('home');
  writeFileSync(join(folder, '404.html'), '<p>no such page</p>');
  const { server, address } = await serve(folder, 0);
  open.push(server);
  const answer = await fetch(`${address}elsewhere/`);
  expect([answer.status, answer.headers.get('content-type')]).toEqual([404, 'text/html; charset=utf-8']);
  expect(await answer.text()).toBe('<p>no such page</p>');
});

test('a taken port: says so and takes the next; refuses when none is left to try', async () => {
  const { server, address } = await serve(folderWith('first'), 0);
  open.push(server);
  const port = Number(new URL(address).port);
  const lines: string[] = [];
  const folder = folderWith('second');
  const second = await serveNear(folder, port, (line) => lines.push(line));
  open.push(second.server);
  expect(lines[0]).toBe(`Port ${port} is taken; trying ${port + 1}.`);
  expect(await (await fetch(second.address)).text()).toBe('second');
  await expect(serveNear(folder, port, () => {}, 1)).rejects.toThrow('EADDRINUSE');
});
