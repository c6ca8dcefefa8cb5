import { fileURLToPath } from 'node:url';
import { build, type Rollup } from 'vite';

/** The text of a file of this folder with all that it imports, as plain JavaScript that a worker can start from at once. */
export async function bundled(file: string): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['@airspring/source'] },
    ssr: { noExternal: true, resolve: { conditions: ['@airspring/source'] } },
    build: {
      write: false,
      minify: false,
      ssr: fileURLToPath(new URL(file, import.meta.url)),
      rollupOptions: { output: { format: 'cjs', inlineDynamicImports: true } },
    },
  });
  return (made as Rollup.RollupOutput).output[0].code;
}
