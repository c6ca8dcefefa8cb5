import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundledScript } from '../../../../.config/bundled-command.js';

/** The text of a file of this folder with all that it imports, as plain JavaScript that a worker can start from at once. */
export async function bundled(file: string): Promise<string> {
  const script = fileURLToPath(new URL(file, import.meta.url));
  return readFileSync(await bundledScript(script, mkdtempSync(join(tmpdir(), 'airspring-worker-')), 'cjs'), 'utf8');
}
