import { parseArgs } from 'node:util';

/** What the command was asked to do. */
export type Asked =
  | { readonly what: 'help' }
  | { readonly what: 'schema' }
  | { readonly what: 'fields' }
  | {
      readonly what: 'design';
      readonly path: string;
      readonly json: boolean;
      /** Whether to tell what builds will scatter. */
      readonly scatter: boolean;
      /** Whether to tell what each wish costs. */
      readonly prices: boolean;
      /** Whether to tell the smallest box for each depth and level in place of designs. */
      readonly tradeOffs: boolean;
      /** The name of the one box that is asked for. */
      readonly only?: string;
      /** The file for a page to print. */
      readonly html?: string;
    }
  | {
      readonly what: 'play';
      readonly path: string;
      /** The file of the recording. */
      readonly recording: string;
      readonly json: boolean;
      readonly only?: string;
      /** What a sample of full scale is given, as text with its unit. */
      readonly peak?: string;
      /** The file for the figure. */
      readonly svg?: string;
      /** How it is simulated; where it is left out, the brief decides. */
      readonly simulation?: 'linear' | 'nonlinear';
    }
  | {
      readonly what: 'build';
      readonly path: string;
      /** The folder for the pages and files. */
      readonly into: string;
      readonly only?: string;
    }
  | { readonly what: 'refused'; readonly line: string };

export const help = `airspring design <brief.json>          print the boxes that meet a brief
airspring design <brief.json> --json   print them as data, in SI units
airspring design <brief.json> --only A print one of the designs alone
airspring design <brief.json> --html page.html
                                       write a page to print as well
airspring design <brief.json> --scatter
                                       tell what builds of each box will scatter,
                                       and what matters most
airspring design <brief.json> --prices tell what each wish at its limit costs:
                                       what the box gains where it gives way
airspring design <brief.json> --trade-offs
                                       print the smallest box for each of several
                                       depths and levels in place of designs
airspring play <brief.json> <recording.wav>
                                       play a recording through the first box: which
                                       limits it passes, when, how often, and how
                                       much louder it may be played
airspring play … --only B              play it through another of the boxes, or
                                       through a change to a box that stands, by its
                                       name, its number or its mark in the report
                                       (3, A, T2)
airspring play … --peak "20 V"         the voltage of a sample of full scale; default
                                       the peak of the greatest sine of the amplifier
airspring play … --linear              leave out what grows with level: the default
                                       where the brief has no largeSignal of a driver
airspring play … --nonlinear           simulate the loss of the vent without that, too
airspring play … --json                print it as data, slice by slice
airspring play … --svg timeline.svg    write a figure as well
airspring build <brief.json> --into <folder>
                                       write everything to build the first box from:
                                       pages to print, cut list, drawings, and the
                                       parts for the printer
airspring build … --only B             for another of the boxes; for a box that
                                       stands, for a change by its number or its
                                       name (3), a combination (A), a set of tubes
                                       for one flange ("set 2"), or one tube of it
                                       (T2)
airspring design --fields              print every field of a brief, with its
                                       units, range, default and an example
airspring design --schema              print the JSON Schema of a brief, for editors

A brief is a JSON file that describes the drivers, the space, the sound that is
wanted, the amplifier, the vent and the printer. It may have comments, as in
// this or /* this */, and commas before closing brackets. A brief with the section
"standing" is about a box that stands already: the report says what it does now,
what each change to it would do, and which combinations of changes serve best.

Exit codes:
  0  every wish is met, or a recording passes no limit
  1  not every wish is met, or a recording passes a limit; the report says why
  2  the brief or the command line has a fault; each fault is one line
  3  the file of the brief or of the recording cannot be read
  4  the report cannot be written, for example because the disk is full
  5  the reader of the report closed the pipe early
  6  the page, the figure or the folder cannot be written; an older one stays as
     it was
  7  a package that this needs is not installed; the line says how to install it
  70 the program itself has a fault
  130 the program was stopped with Ctrl-C
`;

/** Reads the arguments of the command. */
export function readArguments(words: readonly string[]): Asked {
  let read: ReturnType<typeof parse>;
  try {
    read = parse(words);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return { what: 'refused', line: error.message.split(/\.\s/)[0] as string };
  }
  const { values, positionals } = read;
  const [verb, path, ...more] = positionals;
  if (values.help) return { what: 'help' };
  if (verb === 'play') return playArguments(values, path, more);
  if (verb === 'build') return buildArguments(values, path, more);
  if (verb !== 'design')
    return { what: 'refused', line: `expected "design", "play" or "build", got ${verb ? `"${verb}"` : 'nothing'}` };
  const { peak, svg, linear, nonlinear, into } = values;
  const [ofPlay] = Object.entries({ peak, svg, linear, nonlinear }).filter(([, value]) => value !== undefined);
  if (ofPlay) return { what: 'refused', line: `--${ofPlay[0]} is for "play"` };
  if (into !== undefined) return { what: 'refused', line: '--into is for "build"' };
  if (values.schema) return { what: 'schema' };
  if (values.fields) return { what: 'fields' };
  if (path === undefined) return { what: 'refused', line: 'expected the path of a brief after "design"' };
  if (more.length > 0) return { what: 'refused', line: `expected one path, but also got "${more.join('", "')}"` };
  const { json = false, scatter = false, prices = false, 'trade-offs': tradeOffs = false, only, html } = values;
  if (html === '') return { what: 'refused', line: 'expected the path of a file after "--html"' };
  const [ofDesigns] = Object.entries({ scatter, prices, only, html }).filter(([, value]) => value);
  if (tradeOffs && ofDesigns)
    return { what: 'refused', line: `--trade-offs prints no designs, so it goes without --${ofDesigns[0]}` };
  return {
    what: 'design',
    path,
    json,
    scatter,
    prices,
    tradeOffs,
    ...(only !== undefined && { only }),
    ...(html !== undefined && { html }),
  };
}

/** The arguments of `build`. */
function buildArguments(values: Values, path: string | undefined, more: readonly string[]): Asked {
  const refused = (line: string): Asked => ({ what: 'refused', line });
  const { only, into, help: _, ...ofOthers } = values;
  const [unfit] = Object.keys(ofOthers);
  if (unfit !== undefined) return refused(`--${unfit} is not for "build"`);
  if (path === undefined) return refused('expected the path of a brief after "build"');
  if (more.length > 0) return refused(`expected one path, but also got "${more.join('", "')}"`);
  if (into === undefined || into === '') return refused('expected "--into" and the path of a folder');
  return { what: 'build', path, into, ...(only !== undefined && { only }) };
}

/** The arguments of `play`. */
function playArguments(values: Values, path: string | undefined, [recording, ...more]: readonly string[]): Asked {
  const refused = (line: string): Asked => ({ what: 'refused', line });
  const { json = false, only, peak, svg, linear, nonlinear, help: _, ...ofOthers } = values;
  const [unfit] = Object.keys(ofOthers);
  if (unfit !== undefined) return refused(`--${unfit} is for "${unfit === 'into' ? 'build' : 'design'}"`);
  if (path === undefined) return refused('expected the path of a brief after "play"');
  if (recording === undefined) return refused('expected the path of a recording after the brief');
  if (more.length > 0) return refused(`expected two paths, but also got "${more.join('", "')}"`);
  if (svg === '') return refused('expected the path of a file after "--svg"');
  if (linear && nonlinear) return refused('expected one of "--linear" and "--nonlinear", got both');
  return {
    what: 'play',
    path,
    recording,
    json,
    ...(only !== undefined && { only }),
    ...(peak !== undefined && { peak }),
    ...(svg !== undefined && { svg }),
    ...((linear || nonlinear) && { simulation: linear ? 'linear' : 'nonlinear' }),
  };
}

type Values = ReturnType<typeof parse>['values'];

const parse = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      scatter: { type: 'boolean' },
      prices: { type: 'boolean' },
      'trade-offs': { type: 'boolean' },
      only: { type: 'string' },
      html: { type: 'string' },
      peak: { type: 'string' },
      svg: { type: 'string' },
      linear: { type: 'boolean' },
      nonlinear: { type: 'boolean' },
      into: { type: 'string' },
      fields: { type: 'boolean' },
      schema: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });
