import { readdirSync, readFileSync } from 'node:fs';

const content = new URL('../../docs-site/src/content/docs/', import.meta.url);
/** Pages with numbers to drag. */
export const live: readonly string[] = readdirSync(content, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.mdx'))
  .filter((name) => /^example: [\s\S]*<Scrub/m.test(readFileSync(new URL(name, content), 'utf8')))
  .map((name) => name.replace(/(^|\/)index\.mdx$|\.mdx$/, ''))
  .sort();
