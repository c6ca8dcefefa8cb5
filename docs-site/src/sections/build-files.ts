import { html, type Markup } from '../html.js';

/** What can be built: as the command names it, and as a sentence does. */
export interface Buildable {
  readonly only: string;
  readonly words: string;
}

/** As a shell takes it. */
const quoted = (words: string): string => (words.includes(' ') ? `"${words}"` : words);

/** What the page makes when it is asked to, in a worker; the command makes the same without it. */
export const filesToMake = (what: string, all: readonly Buildable[]): Markup => html`
<p>${what} <span data-scripted hidden>${all.map(({ only, words }, i) => html`${i > 0 && ' · '}<button type="button" class="word" data-do="build" data-only="${only}">${i === 0 && 'Files to build '}${words}</button>`)}<span data-stale hidden> (of the previous brief)</span>. </span>The command <code>airspring build brief.json --only ${quoted(all[0]?.only ?? 'A')} --into folder</code> writes the same files.</p>
<p role="status" data-building></p>`;
