import type { Browser } from 'playwright-core';

/**
 * Milliseconds that the work below takes on the machine for which the goals of the site are stated, two cores on which the report of
 * `whale-bench.json` takes 0.54 s. Not measured there: it took 10.4 ms on a machine that was twice as slow by that report.
 */
const STATED = 5.2;

/** Numbers, text and layout: what a page does at a move, and nothing of ours. Milliseconds of the quickest of many rounds. */
function work(): number {
  const column = new Float64Array(4096);
  let quickest = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 40; round++) {
    const from = performance.now();
    for (let k = 1; k <= 80; k++) {
      for (let i = 0; i < column.length; i++) column[i] = Math.sqrt(column[i]! * 0.5 + Math.log(i + k));
    }
    const rows = Array.from(column, (value, i) => ({ at: i / 7, text: (value * 1.234).toPrecision(6) }));
    const { length } = JSON.parse(JSON.stringify(rows));
    const box = document.createElement('div');
    box.innerHTML = `${'<p>some <b>words</b> of a page</p>'.repeat(80)}<svg>${'<path d="M0 0L10 20L30 40Z"/>'.repeat(80)}</svg>`;
    document.body.append(box);
    for (const width of [length / 20, length / 25]) {
      box.style.width = `${width}px`;
      box.getBoundingClientRect();
    }
    box.remove();
    quickest = Math.min(quickest, performance.now() - from);
  }
  return quickest;
}

/**
 * How many times slower this machine is than the stated one, at least 1. What else runs only adds to a round, so that the quickest of
 * forty tells of the machine itself. A limit of time times this is the same limit everywhere.
 */
export async function slowness(browser: Browser): Promise<number> {
  const page = await browser.newPage();
  const taken = await page.evaluate(work);
  await page.close();
  return Math.max(1, taken / STATED);
}
