/** The rooms of the site, in the order of the line on top; a room shows up once its first page is there. */
export const sections = [
  { id: 'start', name: 'Start' },
  { id: 'worked-examples', name: 'Worked examples' },
  { id: 'how-to', name: 'How to' },
  { id: 'formulas', name: 'Formulas' },
  { id: 'api/overview', name: 'API' },
  { id: 'bibliography', name: 'Bibliography' },
  { id: 'cautions', name: 'Cautions' },
] as const;

/** Anchor of the title, where the text begins; the table of contents that Starlight makes names it so. */
export const PAGE_TITLE_ID = '_top';
