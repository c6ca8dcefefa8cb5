/** Something wrong at a place of a text that is edited here. */
export interface Place {
  /** Counted from 1; left out where nobody knows. */
  readonly line?: number;
  readonly message: string;
  /** Characters of the text; the whole line when left out. */
  readonly from?: number;
  readonly to?: number;
}

export const placeText = ({ line, message }: Place): string =>
  `${line === undefined ? 'Somewhere in this text' : `Line ${line}`}: ${message}`;
