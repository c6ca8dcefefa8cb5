import { transform } from 'sucrase';
import type { Place } from './place.js';
import { watchedLoops } from './watched-loops.js';

/** Code that could not be read; the line is the reader's. */
export class SyntaxFault extends Error {
  override readonly name = 'SyntaxFault';
  constructor(readonly place: Place) {
    super(place.message);
  }
}

const importPattern =
  /import\s+(type\s)?([\w$]+|\{[^}]*\}|\*\s+as\s+[\w$]+)\s+from\s+(['"])([^'"]+)\3\s*;?|import\s+(['"])([^'"]+)\5\s*;?/g;

/**
 * Strips the types, turns each import into a call of `__module` and lets each loop ask `__more`, line by line as it was: a
 * line in a stack is a line of the text. Checks no types.
 */
export function compiled(code: string): string {
  let plain: string;
  try {
    plain = transform(code, { transforms: ['typescript'], disableESTransforms: true }).code;
  } catch (error) {
    const { message, loc } = error as Error & { loc?: { line: number } };
    throw new SyntaxFault({
      line: loc?.line ?? 1,
      message: message.replace(/^Error transforming undefined: |\s*\(\d+:\d+\)$/g, ''),
    });
  }
  return watchedLoops(plain).replace(
    importPattern,
    (whole, _type, names: string | undefined, _quote, from: string | undefined, _other, bare: string | undefined) => {
      const lines = '\n'.repeat(whole.split('\n').length - 1);
      const module = `await __module(${JSON.stringify(from ?? bare)})`;
      if (names === undefined) return `${module};${lines}`;
      if (names.startsWith('{'))
        return `const ${names.replace(/\s+as\s+/g, ': ').replace(/\s+/g, ' ')} = ${module};${lines}`;
      const alone = names.replace(/^\*\s+as\s+/, '');
      return names.startsWith('*')
        ? `const ${alone} = ${module};${lines}`
        : `const { default: ${alone} } = ${module};${lines}`;
    },
  );
}
