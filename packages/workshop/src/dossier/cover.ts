import { listed } from './listed.js';
import { caution, escaped, paragraph } from './markup.js';
import type { Work } from './work.js';

/** In which unit the files are that machines read, whatever the pages say. */
const filesUnit = (paths: readonly string[]): string => {
  const kinds = ['DXF', 'STL', '3MF'].filter((kind) => paths.some((path) => path.endsWith(`.${kind.toLowerCase()}`)));
  return kinds.length > 0 ? paragraph(`Lengths in ${listed(kinds)} files are millimetres.`) : '';
};

/** How loud it plays with its caution, and which files lie beside the page: what every cover tells. */
export const playingAndFiles = ({ playing, cautions }: Work, paths: readonly string[]): string =>
  `<h3>How loud it plays, and what keeps it safe</h3>${playing.map(paragraph).join('')}${caution(cautions.hearing)}
<h3>The files beside this page</h3><ul class="files">${paths.map((path) => `<li>${escaped(path)}</li>`).join('')}</ul>${filesUnit(paths)}`;
