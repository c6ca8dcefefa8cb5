/** A file that the reader may keep. */
export interface SavedFile {
  readonly text: string;
  readonly type: string;
}

/** What each file is called in a sentence, and how its name ends. A job makes those that it has. */
export const files = {
  report: { words: 'the report', ending: '-report.txt' },
  curves: { words: 'the curves as CSV', ending: '-curves.csv' },
  sheets: { words: 'the sheets for the saw', ending: '-sheets.html' },
  changes: { words: 'the table of changes as CSV', ending: '-changes.csv' },
  tubes: { words: 'the tubes as CSV', ending: '-tubes.csv' },
  page: { words: 'a page to print', ending: '-page.html' },
} as const;

export type FileName = keyof typeof files;

/** Parts of the page that the answer fills; markup. */
export interface Parts {
  readonly answer: string;
  readonly rest: string;
  /** Seen on paper only. */
  readonly sheets: string;
}

/** All that the page says of a brief, whatever it asks for. */
export interface Told {
  readonly parts: Parts;
  /** The verdict in one line, to stand beside a brief that is being written; markup. */
  readonly line: string;
  /** A picture to stand there too. */
  readonly drawing?: string;
  readonly files: { readonly [Name in FileName]?: SavedFile };
  /** The text of the reader with the changes of the nearest brief that can be met. */
  readonly nearest?: string;
}
