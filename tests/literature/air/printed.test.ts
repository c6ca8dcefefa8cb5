/** Values of air that were read in print: tables of standards and handbooks, examples of textbooks. */
import {
  customAir,
  dryAirSpeedOfSound,
  moistAirDensity,
  speedOfSound,
  standardAtmosphere,
  thermalConductivity,
  viscosity,
  waterVapourFraction,
} from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { printedChecks } from '../printed.js';
import { celsius, state } from './fixtures.js';
import print from './printed.json' with { type: 'json' };

interface State {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
}
const density = (of: State) => moistAirDensity(state(of));
/** Humidity ratio: mass of water per mass of dry air. */
const ratio = (of: State) => {
  const x = waterVapourFraction(state(of));
  return (0.621945 * x) / (1 - x);
};
const at = ({ altitude }: { altitude: number }) => standardAtmosphere(si('altitude', altitude));
const earth = 6356766;
const geometric = ({ altitude }: { altitude: number }) => ({ altitude: (earth * altitude) / (earth - altitude) });
const dry = ({ temperature }: { temperature: number }) => dryAirSpeedOfSound({ temperature: celsius(temperature) });
interface Gas {
  readonly density: number;
  readonly speedOfSound: number;
  readonly viscosity: number;
  readonly thermalConductivity: number;
}
const gas = ({ density, speedOfSound, viscosity, thermalConductivity }: Gas) =>
  customAir({
    temperature: '300 K',
    pressure: '101325 Pa',
    density: si('density', density),
    speedOfSound: si('speed', speedOfSound),
    viscosity: si('viscosity', viscosity),
    thermalConductivity: si('thermalConductivity', thermalConductivity),
  });

const read = printedChecks('air', print);
read('waterVapourFraction', 'humidity ratio', ratio);
read('waterVapourFraction', 'humidity ratio 2005', ratio);
/** Without the enhancement of the vapour in air (picard2008, equation A1.2), which the handbook tells apart. */
const saturation = (of: State) => {
  const enhancement = 1.00062 + 3.14e-8 * of.pressure + 5.6e-7 * of.temperature ** 2;
  return (waterVapourFraction(state(of)) * of.pressure) / enhancement;
};
read('waterVapourFraction', 'saturation', saturation);
read('waterVapourFraction', 'saturation 2005', saturation);
read('moistAirDensity', 'dry volume', (of) => 1 / density(of));
read('moistAirDensity', 'iapws density', density);
read('moistAirDensity', 'icao density', density);
read('moistAirDensity', 'jones 1978', density);
read('moistAirDensity', 'oiml', density);
for (const temperature of ['10', '15', '20'] as const) {
  read('moistAirDensity', `spieweck ${temperature}`, (of) => density(of) / 1000);
}
read('speedOfSound', 'iapws speed', (of) => speedOfSound(state(of)));
read('speedOfSound', 'ideal gas', (of) => speedOfSound(state(of)));
read('dryAirSpeedOfSound', 'icao speed', dry);
read('dryAirSpeedOfSound', 'openstax speed', dry);
read('dryAirSpeedOfSound', 'openstax speed 1', dry);
read('dryAirSpeedOfSound', 'weston speed', (of) => 100 * dry(of));
read('dryAirSpeedOfSound', 'pipe warmed', (of) => (256 * dry(of)) / dry({ temperature: 18 }));
read('viscosity', 'lemmon viscosity', ({ temperature }) => viscosity(celsius(temperature)));
read('viscosity', 'icao viscosity', (of) => viscosity(at(of).temperature));
read('thermalConductivity', 'lemmon conductivity', ({ temperature }) => thermalConductivity(celsius(temperature)));
read('thermalConductivity', 'icao conductivity', ({ temperature }) => thermalConductivity(celsius(temperature)));
read('standardAtmosphere', 'icao temperature', (of) => at(of).temperature);
read('standardAtmosphere', 'icao pressure', (of) => at(of).pressure);
read('standardAtmosphere', 'ashrae temperature', (of) => at(geometric(of)).temperature - 273.15);
read('standardAtmosphere', 'ashrae pressure', (of) => at(geometric(of)).pressure);
read('customAir', 'custom ratio', (of) => gas(of).heatCapacityRatio);
read('customAir', 'custom prandtl', (of) => Math.sqrt(gas(of).prandtlNumber));
read('customAir', 'custom prakash', ({ density, speedOfSound }) => {
  const { heatCapacityRatio } = customAir({
    temperature: '273.15 K',
    pressure: '101300 Pa',
    density: si('density', density),
    speedOfSound: si('speed', speedOfSound),
    viscosity: si('viscosity', 1.72e-5),
    thermalConductivity: si('thermalConductivity', 0.0241),
  });
  return heatCapacityRatio;
});
