import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import type { ReadFields } from '../brief/fields.js';
import { quantity } from '../brief/quantity-text.js';
import type { Job } from '../job/job.js';
import type { BoxKind } from './box-kind.js';
import { type FlareForm, type FlareMaker, formedEnd, formFaults, formField } from './flare-form.js';
import { roundVentSettings, tuningVentAcross, tuningVentFields } from './round-vent-fields.js';
import { roundVents } from './round-vents.js';
import { tunedByVents } from './tuned-by-vent.js';

/** Radius of each rounding where the brief does not say, m. */
const RADIUS = 0.015;

const radius = (end: string) =>
  v.exactOptional(
    v.pipe(
      quantity('length', { least: 0, greatest: 500, unit: 'mm', example: '15 mm' }, 'not-negative'),
      v.description(`radius of the rounding at the ${end} end; 0 mm is a sharp end; default 15 mm`),
    ),
  );

const fields = {
  ...tuningVentFields,
  flare: {
    inner: radius('inner'),
    outer: radius('outer'),
    innerForm: formField('inner'),
    outerForm: formField('outer'),
  },
};

const ENDS = ['inner', 'outer'] as const;

/** The same kind, whose tubes may end in flares of other forms too. */
export function flaredVentedWith(maker?: FlareMaker): BoxKind<typeof fields> {
  const kind: BoxKind<typeof fields> = {
    name: 'flared-vented',
    called: 'a box with flared vents',
    shaped: true,
    byName: true,
    fields,
    across: (written, read) => [...tuningVentAcross(written, read), ...acrossFlare(written, read, maker)],
    variants: (job, choice) => {
      const { flare = {} } = job.sections as ReadFields<typeof fields>;
      const formed = (form: FlareForm | undefined) => (form && maker ? formedEnd(form, maker) : undefined);
      const [innerForm, outerForm] = [formed(flare.innerForm), formed(flare.outerForm)];
      const settings = roundVentSettings(
        job,
        {
          inner: innerForm?.flare.widening ?? flare.inner ?? RADIUS,
          outer: outerForm?.flare.widening ?? flare.outer ?? RADIUS,
        },
        { ...(innerForm && { inner: innerForm }), ...(outerForm && { outer: outerForm }) },
      );
      return settings.counts.map((count) => tunedByVents(job, choice, roundVents(kind, job, choice, settings, count)));
    },
  };
  return kind;
}

/** Ends that are given twice, and forms that nobody makes. */
function acrossFlare(
  written: Readonly<Record<string, unknown>>,
  read: Partial<Job['sections']>,
  maker: FlareMaker | undefined,
): Fault[] {
  const asked = written.flare as Readonly<Record<string, unknown>> | undefined;
  const { flare = {} } = read as { readonly flare?: Readonly<Record<string, FlareForm | number | undefined>> };
  return ENDS.flatMap((end): Fault[] => {
    const form = flare[`${end}Form`] as FlareForm | undefined;
    if (form === undefined || Object.keys(form).length !== 1) return [];
    const path = `flare.${end}Form`;
    if (asked?.[end] === undefined) return formFaults(form, path, maker);
    const expected = `either flare.${end}, ${asked[end]}, or this`;
    return [{ code: 'conflict', path, got: Object.keys(form).join(), expected, remedy: 'Leave one of the two out.' }];
  });
}

/** A vented box whose tubes end in quarter rounds. */
export const flaredVented: BoxKind<typeof fields> = flaredVentedWith();
