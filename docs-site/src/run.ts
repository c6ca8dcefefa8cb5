import { spawn } from 'node:child_process';

/** Runs a script by this very Node; what it said, both ways, comes with its status. */
export const run = (words: readonly string[], cwd: string): Promise<{ status: number | null; output: string }> =>
  new Promise((resolve, reject) => {
    const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' };
    const child = spawn(process.execPath, words, { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (part) => (output += part));
    child.once('error', reject);
    child.once('close', (status) => resolve({ status, output }));
  });
