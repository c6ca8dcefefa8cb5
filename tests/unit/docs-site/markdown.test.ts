import { expect, test } from 'vitest';
import { prose } from '../../../docs-site/src/audit/markdown.js';

const links = { formulas: new Map<string, string>(), references: new Set<string>() };

test('a table of symbols stands in a frame that can be scrolled; an equation that begins with a bar does not', () => {
  expect(prose('| a | b |\n| --- | --- |\n| 1 | 2 |', links)).toContain('<div class="table">');
  expect(prose('Level:\n\n$$ |G|^2 = |N|^2 / |D|^2 $$\n\nand so on.', links)).toBe(
    'Level:\n\n$$\n|G|^2 = |N|^2 / |D|^2\n$$\n\nand so on.',
  );
});
