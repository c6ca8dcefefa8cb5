import type { Work } from '@airspring/workshop/dossier';

/** The work of a plain bench with one driver in its front, which is invented; what a test is about is given over it. */
export const plainWork = (more: Partial<Work> = {}, box: Partial<Work['box']> = {}): Work => ({
  title: 'A bench',
  name: 'Box A',
  summary: 'A box.',
  numbers: [],
  band: { from: 30, to: 120 },
  box: {
    outer: { width: 0.36, height: 0.4, depth: 0.48 },
    thickness: 0.018,
    netVolume: 0.046,
    holes: [
      {
        what: 'driver',
        face: 'front',
        across: 0.18,
        up: 0.25,
        from: ['left', 'bottom'],
        form: 'circle',
        diameter: 0.232,
      },
    ],
    boards: [],
    ...box,
  },
  drivers: {
    name: 'ten-inch driver, invented',
    count: 1,
    series: 1,
    parallel: 1,
    isobaric: false,
    outerDiameter: 0.262,
    cutoutDiameter: 0.232,
  },
  load: 'It is a load of 6 Ω.',
  vents: [],
  building: [],
  assumed: [],
  playing: [],
  impedance: { text: 'Measure.', frequencies: [10, 100], magnitude: [6, 8], peaks: [], dips: [] },
  cautions: { fumes: 'Fumes: ventilate.' },
  tools: {},
  unit: 'mm',
  ...more,
});
