import type { Design } from 'airspring';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';

/** What a caution is about: the word before its colon. */
const subjectOf = (caution: string): string => caution.split(':')[0] ?? '';

/** The cautions of a design about some subjects, each at the step where it is needed. */
export const cautionsAbout = (design: Design, ...subjects: readonly string[]): Markup[] =>
  design.cautions.filter((caution) => subjects.includes(subjectOf(caution))).map(cautionMarkup);

/** Cautions about anything else: none may get lost. */
export const otherCautions = (design: Design, ...subjects: readonly string[]): Markup[] =>
  design.cautions.filter((caution) => !subjects.includes(subjectOf(caution))).map(cautionMarkup);

function cautionMarkup(caution: string): Markup {
  const subject = subjectOf(caution);
  return html`<p class="caution"><strong>${subject}:</strong>${tied(caution.slice(subject.length + 1))}</p>`;
}
