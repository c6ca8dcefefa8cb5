import { describe, expect, test } from 'vitest';
import { watchedLoops } from '../../../docs-site/src/elements/watched-loops.js';

const quoted = `const s = 'while (1)'; // for (;;)
/while (1)/.test(\`for (;;) \${1}\`); o.while(1);`;

describe('loops that ask whether there is time left', () => {
  test.each([
    ['for (;;) n++;', 'for (;__more(1);) n++;'],
    ['for (let i = 0; i < 3; i++) {}', 'for (let i = 0;__more(1) && ( i < 3); i++) {}'],
    ['let n = 0;\nwhile (n < 3) n++;', 'let n = 0;\nwhile (__more(2) && (n < 3)) n++;'],
    ['do n++;\r\nwhile (n < f(1, (2)));', 'do n++;\r\nwhile (__more(2) && (n < f(1, (2))));'],
    [
      'for (const f = () => { a; b; }; f(); f()) while (true);',
      'for (const f = () => { a; b; };__more(1) && ( f()); f()) while (__more(1) && (true));',
    ],
    ['for (const a of [1]) for (const b in a) ;', 'for (const a of [1]) for (const b in a) ;'],
    [quoted, quoted],
  ])('%s', (code, watched) => expect(watchedLoops(code)).toBe(watched));

  test('what they compute stays', () => {
    const code = 'let s = 0; for (let i = 0; i < 4; i++) { let k = i; do s += k; while (k-- > 0, k > 0); } return s;';
    const asked: number[] = [];
    const more = (line: number) => asked.push(line) > 0;
    const run = (text: string) => new Function('__more', text)(more);
    expect(run(watchedLoops(code))).toBe(run(code));
    expect(asked.length).toBe(5 + 7);
  });
});
