import type { Brief, Retrofit } from 'airspring';
import { html, type Markup, trusted } from '../html.js';
import { filesOfChanges } from './build.js';
import { changes } from './changes.js';
import { wholeDesigns } from './designs.js';
import { factsOf } from './facts.js';
import { firstAnswer, firstLine } from './first.js';
import { checkByEye, measureFirst } from './measure.js';
import { measuredDrivers } from './measured.js';
import { whatItDoesNow, whatWasAssumed } from './now.js';
import { quietestVents } from './ranked.js';
import { workshopSheet } from './sheet.js';
import { tubesOfOneFlange } from './tubes.js';
import { tubesBeside } from './tubes-beside.js';

/** Width of the drawing beside the brief, pixels. */
const SMALL = 500;

/** What the page says of a box that stands; the same in a build and in the worker of the page. */
export function retrofitAnswer(
  brief: Brief,
  answer: Retrofit,
): { readonly [Part in 'answer' | 'rest' | 'line' | 'drawing' | 'sheets']: Markup } {
  const facts = factsOf(brief, answer);
  const picture = tubesBeside(facts);
  return {
    answer: firstAnswer(facts),
    rest: html`
${whatItDoesNow(facts)}
${measuredDrivers(facts)}
${quietestVents(facts)}
${changes(facts)}
${wholeDesigns(facts)}
${tubesOfOneFlange(facts)}
${filesOfChanges(facts)}
${measureFirst(facts)}
${checkByEye(facts)}
${whatWasAssumed(facts)}`,
    line: firstLine(facts),
    drawing: html`${picture && trusted(picture.draw(SMALL))}`,
    sheets: workshopSheet(facts),
  };
}
