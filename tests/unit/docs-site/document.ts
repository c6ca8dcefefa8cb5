import { parseHTML } from 'linkedom';

/** A document outside of a browser: figures are drawn in one, tests read a page as one. */
export const documentOf = (markup: string): Document => parseHTML(markup).document as unknown as Document;
