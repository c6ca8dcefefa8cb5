import { cautions } from '../../../packages/airspring/src/record/cautions.js';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';

/** A caution of the work, at the step where it is needed. */
export function caution(of: keyof typeof cautions): Markup {
  const [subject = '', ...rest] = cautions[of].split(':');
  return html`<p class="caution"><strong>${subject}:</strong>${tied(rest.join(':'))}</p>`;
}
