import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { designedOf } from '../built-as-designed.js';
import { html, type Markup } from '../html.js';

/** Asks for the dip that was measured on the finished box; needs its script. */
export function measured(designs: readonly Design[], facts: BriefFacts): Markup {
  const known = designs.flatMap((design) => designedOf(design, facts) ?? []);
  if (known.length === 0) return html``;
  const names = html`<select aria-label="Which box you built">${known.map(({ name }) => html`<option value="${name}">box ${name}</option>`)}</select>`;
  return html`<p data-scripted hidden><built-box data-designs="${JSON.stringify(known)}">You built ${known.length > 1 ? names : `box ${known[0]?.name}`}, and the dip that you measured lies at <input type="number" min="1" max="500" step="0.1" inputmode="decimal" aria-label="Measured dip of the impedance, Hz" /> Hz. <output></output></built-box></p>`;
}
