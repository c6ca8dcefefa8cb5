import * as v from 'valibot';
import { air, audible, coil, most, ohms, Q, size } from './bounds.js';
import { described } from './described.js';
import { type DriverModels, modelField } from './driver-models.js';
import { largeSignalField } from './large-signal.js';
import { quantity, wholeNumber, words } from './quantity-text.js';
import { seatingFields } from './seating.js';
import { sensitivityFields } from './sensitivity.js';

const opt = v.exactOptional;

/** A driver to choose from: the data of its sheet, and its sizes. */
export const driverFields = {
  name: described(words(200, 'ten-inch driver'), 'what the report calls it'),
  fs: opt(described(quantity('frequency', audible), 'resonance in free air')),
  Qts: opt(described(Q, 'quality factor of motor and suspension together')),
  Qes: opt(described(Q, 'quality factor of the motor')),
  Qms: opt(described(Q, 'quality factor of the suspension')),
  Vas: opt(described(quantity('volume', air), 'volume of air as compliant as the suspension')),
  Sd: opt(described(quantity('coneArea', { least: 0.1, greatest: 20_000, unit: 'cm²' }), 'area that moves air')),
  coneDiameter: opt(
    described(
      quantity('length', { ...size, example: '205 mm' }),
      'instead of Sd: diameter of the cone with half the surround',
    ),
  ),
  Mms: opt(
    described(
      quantity('mass', { least: 0.01, greatest: 10_000, unit: 'g' }),
      'moving mass with the air that moves with it',
    ),
  ),
  Cms: opt(
    described(quantity('compliance', { least: 1e-4, greatest: 1000, unit: 'mm/N' }), 'compliance of the suspension'),
  ),
  Rms: opt(
    described(
      quantity('mechanicalResistance', { least: 1e-3, greatest: 1e4, unit: 'N·s/m' }),
      'mechanical resistance of the suspension',
    ),
  ),
  Re: opt(described(quantity('resistance', ohms), 'resistance of the voice coil for direct current')),
  Bl: opt(
    described(quantity('forceFactor', { least: 0.01, greatest: 1000, unit: 'T·m' }), 'force factor of the motor'),
  ),
  Le: opt(described(quantity('inductance', coil), 'inductance of the voice coil; default none')),
  Xmax: described(
    quantity('displacementPeak', { least: 0.001, greatest: 200, unit: 'mm' }),
    'greatest travel of the cone in one direction',
  ),
  Pe: described(
    quantity('power', { least: 0.001, greatest: 100_000, unit: 'W' }),
    'power that the voice coil can turn into heat continuously',
  ),
  outerDiameter: described(quantity('length', { ...size, example: '262 mm' }), 'diameter of the frame'),
  cutoutDiameter: described(quantity('length', { ...size, example: '232 mm' }), 'diameter of the hole in the panel'),
  depth: described(quantity('length', { ...size, example: '118 mm' }), 'depth from the outside of the panel'),
  displacedVolume: opt(
    described(
      quantity('volume', { least: 1e-4, greatest: 1000, unit: 'L', example: '1.6 L' }),
      'volume that it takes up inside the box; default an estimate from cutout and depth',
    ),
  ),
} as const;

const entriesWith = ({ coils, suspensions }: DriverModels) => ({
  ...driverFields,
  coil: opt(modelField(coils, 'what the voice coil has besides Re, in place of Le; default Le alone')),
  suspension: opt(modelField(suspensions, 'how the compliance changes with frequency; default not at all')),
  ...sensitivityFields,
  largeSignal: opt(largeSignalField),
  wirings: opt(
    v.pipe(
      v.array(
        v.strictObject({
          series: opt(described(wholeNumber(1, 4), 'number in series in each branch; default 1')),
          parallel: opt(described(wholeNumber(1, 4), 'number of branches in parallel; default 1')),
          isobaric: opt(
            described(v.boolean(), 'whether the drivers are mounted in pairs, one behind the other; default false'),
          ),
        }),
      ),
      v.minLength(1, 'empty\nat least one wiring\nGive one, or leave the field out for a single driver.'),
      most(),
      v.description('how many of these drivers, and how they are wired; each wiring is tried; default one driver'),
    ),
  ),
  ...seatingFields,
});

/** A driver to choose from, its models, and the wirings in which it may be used. */
export const driverSchema = (models: DriverModels) => v.strictObject(entriesWith(models));

/** What a sheet tells of a driver that cannot be found by measuring the box in which it stands. */
export const sheetOnly = ['Xmax', 'Pe', 'outerDiameter', 'cutoutDiameter', 'depth'] as const;
const measurable = (name: (typeof sheetOnly)[number]) => {
  const schema = driverFields[name];
  return opt(
    described(schema, `${v.getDescription(schema as never)}; only a driver that is measured in its box may lack it`),
  );
};

/** The same where its box exists already, and may have been measured in place of a sheet. */
export const standingDriverSchema = (models: DriverModels) =>
  v.strictObject({
    ...entriesWith(models),
    ...(Object.fromEntries(sheetOnly.map((name) => [name, measurable(name)])) as {
      readonly [Name in (typeof sheetOnly)[number]]: ReturnType<typeof measurable>;
    }),
  });
