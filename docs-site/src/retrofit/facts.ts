import { type Brief, type Retrofit, type RowDone, unitsOf } from 'airspring';
import { type MarkedSet, markedSets } from '../../../packages/airspring/src/standing/marked-tubes.js';
import { doneRows } from '../../../packages/airspring/src/words/changes-text.js';
import { type Phrasing, phrasing } from '../../../packages/airspring/src/words/phrasing.js';

/** What every part of the page needs to know of a box that stands. */
export interface Facts {
  readonly sets: readonly MarkedSet[];
  readonly answer: Retrofit;
  readonly say: Phrasing;
  /** The change that does most, with its number in the list of all; left out where none helps. */
  readonly first?: { readonly number: number; readonly row: RowDone };
}

export function factsOf(brief: Brief, answer: Retrofit): Facts {
  const found = doneRows(answer).find(([, row]) => row === answer.rows[answer.first ?? -1]);
  return {
    answer,
    sets: markedSets(answer.tubeSets),
    say: phrasing(unitsOf(brief)),
    ...(found && { first: { number: found[0], row: found[1] } }),
  };
}
