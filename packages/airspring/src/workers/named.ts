import { type BriefOptions, completeOptions } from '../kind/brief-options.js';

/** The names of everything that a brief may name, as one text. */
export function named(options: BriefOptions): string {
  const { kinds, models, alignments } = completeOptions(options);
  const names = [kinds, models.coils, models.suspensions, alignments].map((list) => list.map(({ name }) => name));
  return JSON.stringify(names);
}
