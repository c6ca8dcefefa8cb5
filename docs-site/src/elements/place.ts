/** Something wrong at a place of a text that is edited here. */
export interface Place {
  /** Counted from 1; left out where nobody knows. */
  readonly line?: number;
  readonly message: string;
  /** Characters of the text; the whole line when left out. */
  readonly from?: number;
  readonly to?: number;
}

const placeText = ({ line, message }: Place): string =>
  `${line === undefined ? 'Somewhere in this text' : `Line ${line}`}: ${message}`;

/** Lists what is wrong, and hides the list where nothing is. */
export function listPlaces(list: HTMLElement, places: readonly Place[]): void {
  list.hidden = places.length === 0;
  list.replaceChildren(
    ...places.map((place) => {
      const item = document.createElement('li');
      item.textContent = placeText(place);
      return item;
    }),
  );
}
