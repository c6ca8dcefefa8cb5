import type { BuildFile } from './file.js';

/**
 * A folder of files as one ZIP archive, all of them within a folder of the given name. The same files give the same bytes: the archive
 * says of each that it is of 1980. The package fflate, which packs it, is loaded at the first call.
 *
 * @validity paths with `/` between folders
 * @source own derivation: the ZIP format, by its maintained writer
 * @example writeFileSync('bench.zip', await archiveOf(made.files, 'bench'))
 */
export async function archiveOf(files: readonly BuildFile[], folder: string): Promise<Uint8Array> {
  const { strToU8, zipSync } = await import('fflate');
  const packed = files.map(({ path, contents }) => [
    `${folder}/${path}`,
    typeof contents === 'string' ? strToU8(contents) : contents,
  ]);
  // Archives hold no time zone: a time of the local clock is the same everywhere.
  return zipSync(Object.fromEntries(packed), { level: 6, mtime: new Date(1980, 0, 1) });
}
