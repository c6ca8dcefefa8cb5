import { listed } from './listed.js';
import { escaped, paragraph, section } from './markup.js';

/** In which unit the files are that machines read, whatever the pages say. */
const filesUnit = (paths: readonly string[]): string => {
  const kinds = ['DXF', 'STL', '3MF'].filter((kind) => paths.some((path) => path.endsWith(`.${kind.toLowerCase()}`)));
  return kinds.length > 0 ? paragraph(`Lengths in ${listed(kinds)} files are millimetres.`) : '';
};

/** Which files lie beside the page. */
export const filesSection = (paths: readonly string[]): string =>
  section(
    'The files beside this page',
    `<ul class="files">${paths.map((path) => `<li>${escaped(path)}</li>`).join('')}</ul>${filesUnit(paths)}`,
    'on',
  );
