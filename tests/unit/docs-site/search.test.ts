/** Questions as a builder types them, and the pages that answer each. Written before the words that the search knows. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Findable, rank } from '../../../docs-site/src/search/rank.js';
import words from '../../../docs-site/src/search/words.json' with { type: 'json' };

const example = (name: string) => `/worked-examples/${name}/`;
const [small, wider, quiet, deeper, below, two, impedance] = [
  'how-small',
  'wider-vent',
  'quiet-vent',
  'deeper-or-louder',
  'no-bass-below-the-tuning',
  'one-or-two',
  'what-impedance-tells',
].map(example) as [string, string, string, string, string, string, string];
const chuffs = example('it-chuffs');
const heard = example('which-vent-is-quiet');
const bandPass = example('band-pass');
const music = example('your-own-music');
const loud = example('how-loud');
const corner = example('what-the-corner-adds');
const [start, cautions] = ['/start/', '/cautions/'];
const [sheet, measured, trade, faster, ownCoil] = [
  '/how-to/read-a-sheet-with-gaps/',
  '/how-to/enter-a-measured-driver/',
  '/how-to/trade-volume-depth-and-level/',
  '/how-to/sweep-faster/',
  '/how-to/write-a-coil-model/',
];
const [unknown, pipe, coil, behind, baffle, stuffed] = [
  'no-sheet',
  'how-long-a-pipe',
  'what-my-coil-changes',
  'second-driver-behind',
  'how-wide-a-baffle',
  'stuffed-vent',
].map(example) as [string, string, string, string, string, string];

const [print, cut] = ['print-the-vent', 'cut-the-box'].map(example) as [string, string];

const questions: readonly (readonly [question: string, ...pages: readonly string[]])[] = [
  ['port', wider, quiet],
  ['round port or slot port', heard],
  ['several small ports or one big port', heard],
  ['port compression', heard],
  ['from which level is a vent heard', heard],
  ['port noise', quiet, wider, chuffs, heard],
  ['chuffing', quiet, wider, chuffs, heard],
  ['play a song through my box', music],
  ['on which notes does it chuff', music],
  ['wav file', music],
  ['does my amplifier clip with real music', music],
  ['bass reflex', start, deeper, below],
  ['subwoofer', start, quiet],
  ['excursion', deeper, below],
  ['plywood', start, quiet, cut],
  ['3d print a port', print, quiet],
  ['stl of a port', print],
  ['which hole saw', print, chuffs],
  ['kerf', cut],
  ['how do I lay out panels on a sheet of plywood', cut],
  ['how long should the port be', wider, start],
  ['how big should my box be', small, start],
  ['port diameter', wider],
  ['sealed or ported', below, deeper],
  ['sealed box size', small],
  ['4th order bandpass', bandPass],
  ['bandpass subwoofer', bandPass],
  ['what tuning frequency should I use', deeper, start],
  ['my port whistles', quiet, wider, chuffs, heard],
  ['two subs in one box', two],
  ['two woofers in parallel', two],
  ['how loud can it play', deeper, loud],
  ['power compression', loud],
  ['will my voice coil burn', loud],
  ['what gives out first', loud],
  ['room gain', corner],
  ['subwoofer in a corner', corner],
  ['cabin gain of a car', corner],
  ['crossover to main speakers delay', corner],
  ['why does the cone flap below tuning', below],
  ['protect woofer from over excursion', below, deeper],
  ['high pass filter for ported box', below],
  ['how to measure box tuning', impedance],
  ['impedance peaks of a ported box', impedance],
  ['is my box leaking', impedance],
  ['cut list', cut, start, quiet],
  ['MDF thickness', cut, start, quiet],
  ['sawdust mask', cautions],
  ['hearing damage', cautions],
  ['is it safe to wire to mains', cautions],
  ['3d printed port', print, quiet],
  ['bent port elbow does not fit', quiet],
  ['small speaker box deep bass', small],
  ['smallest enclosure for 10 inch driver', small, quiet],
  ['datasheet is missing Vas', sheet],
  ['where do I find thiele small parameters', sheet, measured, start],
  ['I measured my speaker, what do I enter', measured],
  ['beginner first speaker', start],
  ['add a second driver louder', two],
  ['port velocity m/s', quiet, wider],
  ['how low will it go', deeper, start],
  ['amplifier power 4 ohm load', two],
  ['two unknown speakers, no data sheet, only a multimeter', unknown],
  ['what can I do with old drivers when I have no datasheet', unknown],
  ['how long must a transmission line be', pipe],
  ['pipe a quarter of a wave long for a bass driver', pipe],
  ['does the inductance of the voice coil change my bass', coil],
  ['Le on the sheet, does it matter for a subwoofer', coil],
  ['smaller box or deeper bass or more loudness, which do I give up', trade],
  ['run thousands of curves faster', faster],
  ['add my own voice coil model', ownCoil],
  ['one woofer behind another', behind],
  ['isobaric clamshell', behind],
  ['speaker on a flat board without a box', baffle],
  ['dipole panel how wide', baffle],
  ['stuff the port with wool', stuffed],
  ['foam in the hole of a closed box to tame the peak', stuffed],
  ['capacitor in series with a sealed box', example('what-a-capacitor-buys')],
  ['resonance of a port in the midrange', example('will-a-long-vent-ring')],
  ['harmonic distortion of a vent', '/how-to/ask-how-a-vent-distorts/'],
  ['biquad coefficients', '/how-to/make-a-filter-digital/'],
  ['tone burst', '/how-to/try-short-tones/'],
];

const pages = new URL('../../../docs-site/src/content/docs/', import.meta.url);
const findable: readonly Findable[] = readdirSync(pages, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.mdx'))
  .map((file) => {
    const text = readFileSync(new URL(file, pages), 'utf8');
    const address = `/${file.replace(/(index)?\.mdx$/, '')}/`.replace(/\/{2,}/g, '/');
    const said = (name: string) => new RegExp(`^${name}: *(.*)$`, 'm').exec(text)?.[1] ?? '';
    return {
      address,
      title: said('title'),
      summary: said('summary'),
      keywords: said('keywords'),
      words: (words as Readonly<Record<string, string>>)[address] ?? '',
    };
  });

test('eighty-two questions: at least 81 first hits answer them', () => {
  expect(questions).toHaveLength(82);
  const wrong = questions.flatMap(([question, ...right]) => {
    const first = rank(question, findable)[0]?.address;
    return first !== undefined && right.includes(first) ? [] : [`${question}: ${first}`];
  });
  expect(wrong.length, wrong.join('\n')).toBeLessThanOrEqual(1);
});

test('words are given to pages that are there, and nothing is found for nonsense', () => {
  const addresses = findable.map(({ address }) => address);
  expect(Object.keys(words).filter((address) => !addresses.includes(address))).toEqual([]);
  expect(rank('xyzzy', findable)).toEqual([]);
  expect(rank('the of and', findable)).toEqual([]);
});
