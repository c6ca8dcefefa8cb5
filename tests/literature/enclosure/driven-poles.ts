/** Boxes by what their drivers are made of, and the poles of their motion: script driven-poles.py. */
import { type DriverGroup, driver, group } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import motions from './driven-poles.json' with { type: 'json' };

export { motions };

export const poles = {
  key: 'scipy',
  locator: 'numpy.linalg.eigvals: poles of the cones on the air, a spring of γ p Sd²/V; script driven-poles.py',
};

const units = {
  Sd: 'm²',
  Mms: 'kg',
  Cms: 'm/N',
  Rms: 'N·s/m',
  Re: 'Ω',
  Bl: 'T·m',
  V: 'm³',
  fb: 'Hz',
  Rg: 'Ω, for each driver',
  drivers: '1, in parallel',
  fill: '1, gain by filling',
} as const;
type Name = keyof typeof units;
const column = (name: Name) => ({ value: motions.map((row) => row[name]), unit: units[name] });

export const physicalGiven = Object.fromEntries(
  (Object.keys(units) as Name[]).map((name) => [name, column(name)]),
) as Readonly<Record<Name, ReturnType<typeof column>>>;

/** A group of such drivers. */
const groupOf = ({ Sd, Mms, Cms, Rms, Re, Bl, drivers }: Readonly<Record<Name, number>>): DriverGroup =>
  group(
    driver({
      Sd: si('coneArea', Sd),
      Mms: si('mass', Mms),
      Cms: si('compliance', Cms),
      Rms: si('mechanicalResistance', Rms),
      Re: si('resistance', Re),
      Bl: si('forceFactor', Bl),
    }),
    { parallel: drivers },
  );

/** A closed box with them; one resistance feeds the coils in parallel. */
export const physicalBox = (given: Readonly<Record<Name, number>>) => ({
  drivers: groupOf(given),
  netVolume: si('volume', given.V),
  fillGain: given.fill,
  sourceResistance: si('resistance', given.Rg / given.drivers),
});

/** A vented box with them. Filling is left out: it stands for a greater volume. */
export const physicalVented = ({ fillGain, netVolume, ...box }: ReturnType<typeof physicalBox>, fb: number) => ({
  ...box,
  netVolume: si('volume', netVolume * fillGain),
  fb: si('frequency', fb),
});
