import json from './fixtures.json' with { type: 'json' };

/** Filters by an independent program; `fixtures.py` beside this file wrote them. */
export const fixtures = json;
export const { frequencies } = json;
export const scipy = { key: 'scipy', locator: 'scipy.signal, from zeros and poles' } as const;
