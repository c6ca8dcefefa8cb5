import { readFileSync } from 'node:fs';
import { type Answer, type Brief, design } from 'airspring';
import { type PageInput, page } from '../../../docs-site/src/page.js';

const text = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');

/** The brief of the page. */
export const whaleBench = JSON.parse(text('../../../packages/airspring/briefs/whale-bench.json')) as Brief;

/** The page of a brief, and the answer that it must say. */
export function pageOf(brief: Brief, change: Partial<PageInput> = {}): { answer: Answer; markup: string } {
  const answer = design(brief);
  const input = {
    question: 'Will it fit?',
    story: 'A test.',
    brief,
    answer,
    references: JSON.parse(text('../../ledger/references.json')),
    style: '',
  };
  return { answer, markup: page({ ...input, ...change }) };
}
