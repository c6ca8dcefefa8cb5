import { readFileSync } from 'node:fs';
import type { Answer, Brief } from 'airspring';
import { html } from '../../../docs-site/src/html.js';
import { briefAnswer } from '../../../docs-site/src/page.js';
import { sources } from '../../../docs-site/src/sections/sources.js';
import { answerTo } from '../../arbitrary/brief.js';

const text = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');

/** The brief of the page. */
export const whaleBench = JSON.parse(text('../../../packages/airspring/briefs/whale-bench.json')) as Brief;

/** What the page says of a brief, and the answer that it must say. */
export function pageOf(brief: Brief): { answer: Answer; markup: string } {
  const answer = answerTo(brief);
  const said = briefAnswer(brief, answer);
  const references = JSON.parse(text('../../ledger/references.json'));
  const { markup } =
    html`<html lang="en"><body><main><h1>${brief.title}</h1>${said.answer}${said.rest}${sources(references, { small1973vented1: 'the network', small1973vented2: 'levels', rayleigh1896: 'the resonance', 'iec60268-22': 'travel', niosh98_126: 'exposure', practice: 'air speed', holman2005: 'jets', salvatti2002: 'a speed', atig2004: 'loss' })}</main></body></html>`;
  return { answer, markup };
}
