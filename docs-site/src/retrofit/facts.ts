import { read } from '@airspring/core/quantity';
import type { Brief, Retrofit, RowDone } from 'airspring';
import { doneRows } from '../../../packages/airspring/src/words/changes-text.js';
import { type Phrasing, phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { type NamedSet, namedSets } from './proposed.js';

/** What every part of the page needs to know of a box that stands. */
export interface Facts {
  /** Sets of tubes with the names of the proposed ones. */
  readonly sets: readonly NamedSet[];
  readonly answer: Retrofit;
  readonly say: Phrasing;
  /** Of every panel, m. */
  readonly panelThickness: number;
  /** The change that does most, with its number in the list of all; left out where none helps. */
  readonly first?: { readonly number: number; readonly row: RowDone };
}

interface WrittenStanding {
  readonly standing: { readonly panelThickness: `${number} mm` };
}

export function factsOf(brief: Brief, answer: Retrofit): Facts {
  const { panelThickness } = (brief as unknown as WrittenStanding).standing;
  const found = doneRows(answer).find(([, row]) => row === answer.rows[answer.first ?? -1]);
  return {
    answer,
    sets: namedSets(answer),
    say: phrasing(brief.units ?? {}),
    panelThickness: read('length', panelThickness),
    ...(found && { first: { number: found[0], row: found[1] } }),
  };
}
