/** Vents that end in an ellipse, an exponential flare or a profile of one's own: tuned, placed, told and printed as the very solid is. */
import { flanged } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import * as solid from '@airspring/workshop/solid';
import {
  airwayOf,
  ellipticFlare,
  exponentialFlare,
  flareThrough,
  printedTuning,
  ventSolid,
} from '@airspring/workshop/solid';
import { type Brief, type Design, design, flaredVentedWith, reportText, standard } from 'airspring';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { run } from '../../../packages/airspring/src/command/run.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { demo } from '../../arbitrary/brief.js';
import { faultsOf } from '../../refusal/faults.js';

const m = (length: number) => si('length', length);
const flared = (flare: object): Brief =>
  ({
    ...demo,
    box: { kinds: ['flared-vented'] },
    flare,
    vent: { ...demo.vent, smallest: '60 mm', largest: '60 mm', bends: 0 },
  }) as Brief;
const kinds = standard.map((kind) => (kind.name === 'flared-vented' ? flaredVentedWith(solid) : kind));
const read = (brief: Brief) => readBrief(brief, kinds);

function designed(brief: Brief): { readonly design: Design; readonly report: string } {
  const answer = design(brief, { flares: solid });
  const [found] = answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);
  return { design: found!, report: reportText(answer).replace(/\s+/g, ' ') };
}

const profile = [
  ['0 mm', '0 mm'],
  ['15 mm', '3 mm'],
  ['25 mm', '12 mm'],
];
const points = [
  [0, 0],
  [0.015, 0.003],
  [0.025, 0.012],
] as const;
const forms = {
  ellipse: {
    written: { ellipse: { depth: '30 mm', widening: '15 mm' } },
    flare: ellipticFlare({ depth: '30 mm', widening: '15 mm' }),
    says: 'a quarter of an ellipse, 30 mm deep',
  },
  exponential: {
    written: { exponential: { depth: '40 mm', widening: '12 mm' } },
    flare: exponentialFlare({ depth: '40 mm', widening: '12 mm' }),
    says: 'a flare that grows exponentially, 40 mm deep',
  },
  profile: {
    written: { profile },
    flare: flareThrough(points),
    says: 'a flare by the 3 points of the brief, 25 mm deep',
  },
} as const;

test.each(Object.entries(forms))(
  '%s: the tuning of the design is that of the solid that is printed',
  async (_, form) => {
    const brief = flared({ innerForm: form.written, outer: '12 mm' });
    const { design: made, report } = designed(brief);
    const { vent, box } = made;
    expect(vent!.flare).toMatchObject({ inner: form.flare.widening, outer: 0.012 });
    expect(report).toContain(form.says);
    // The tuning from the clear areas of the solid, with nothing of the design but its sizes.
    const drawn = ventSolid({
      diameter: m(vent!.diameter),
      wall: m((vent!.outerDiameter - vent!.diameter) / 2),
      length: m(vent!.length),
      innerFlare: form.flare,
      outerFlare: solid.roundFlare({ radius: '12 mm' }),
    });
    const printed = printedTuning({ vent: drawn, netVolume: si('volume', box.netVolume) }, read(brief).air);
    expect(printed.printed / vent!.fb).toBeCloseTo(1, 4);
    expect(printed.narrowest).toBeCloseTo((Math.PI / 4) * vent!.diameter ** 2, 6);
    // It matters: with a sharp inner end the same tube tunes elsewhere.
    const sharp = tuning({
      vent: { diameter: m(vent!.diameter), length: m(vent!.length), outerEnd: flanged },
      netVolume: si('volume', box.netVolume),
    });
    if (!sharp.ok) throw new Error(sharp.because[0]!.text);
    expect(Math.abs(sharp.fb / vent!.fb - 1)).toBeGreaterThan(0.005);
    // The files hold that very solid: as wide at its inner mouth as the flare.
    const { files, notes } = await filesToBuildFrom(workOf(made, read(brief)));
    expect(notes).toEqual([]);
    expect(files.some(({ path }) => path.endsWith('.stl'))).toBe(true);
    const { areas } = airwayOf(drawn);
    const mouth = Math.PI * (vent!.diameter / 2 + form.flare.widening) ** 2;
    expect(Math.max(...areas.slice(-3))).toBeGreaterThan(0.75 * mouth);
  },
);

test('the air that a flare takes is that of its wall, turned around its axis', () => {
  // As much as the ends of two boxes differ that are alike otherwise: Pappus for the triangle between cone and tube.
  const cone = designed(
    flared({
      innerForm: {
        profile: [
          ['0 mm', '0 mm'],
          ['30 mm', '15 mm'],
        ],
      },
      outer: '0 mm',
    }),
  ).design;
  const { vent, box } = cone;
  const [width, height, depth] = box.inner;
  const outer = vent!.outerDiameter / 2;
  const tube = Math.PI * outer ** 2 * (vent!.length - box.panelThickness);
  const beside =
    (Math.PI / 3) * 0.03 * ((outer + 0.015) ** 2 + (outer + 0.015) * outer + outer ** 2) - Math.PI * outer ** 2 * 0.03;
  expect(box.netVolume).toBeCloseTo(width * height * depth - 1.6e-3 - 0.5e-3 - tube - beside, 7);
});

test('what is wrong is told at its path', () => {
  const faults = (flare: object, some = kinds as readonly (typeof kinds)[number][]) =>
    faultsOf(() => readBrief(flared(flare), some)).map(({ code, path }) => [code, path]);
  expect(faults({ innerForm: forms.ellipse.written })).toEqual([]);
  expect(faults({ innerForm: forms.ellipse.written, inner: '10 mm' })).toEqual([['conflict', 'flare.innerForm']]);
  expect(
    faults({
      outerForm: {
        profile: [
          ['0 mm', '0 mm'],
          ['20 mm', '3 mm'],
          ['10 mm', '9 mm'],
        ],
      },
    }),
  ).toEqual([['unsorted', 'flare.outerForm.profile[2]']]);
  expect(faults({ outerForm: { ellipse: { depth: '0 mm', widening: '3 mm' } } })).toEqual([
    ['not-positive', 'flare.outerForm.ellipse.depth'],
  ]);
  expect(faults({ innerForm: {} })).toEqual([['empty', 'flare.innerForm']]);
  expect(faults({ innerForm: forms.ellipse.written }, [...standard])).toEqual([['inconsistent', 'flare.innerForm']]);
});

test('the command takes such a brief', async () => {
  const { mkdtempSync, writeFileSync } = await import('node:fs');
  const { tmpdir } = await import('node:os');
  const { join } = await import('node:path');
  const path = join(mkdtempSync(join(tmpdir(), 'airspring-flare-')), 'brief.json');
  writeFileSync(path, JSON.stringify(flared({ innerForm: forms.ellipse.written })));
  const { out, error } = await run(['design', path], '.');
  expect(error).toBe('');
  expect(out.replace(/\s+/g, ' ')).toContain(forms.ellipse.says);
});
