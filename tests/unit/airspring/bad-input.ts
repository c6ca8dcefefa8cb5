/** Where something is put into the whole brief (nothing: the brief itself), what; and the fault that it must be told with. */
export type BadInput = readonly [place: string, value: unknown, code: string, path: string, says: string];

/** Takes the field out. */
export const ABSENT = Symbol('absent');

const wholes: readonly BadInput[] = [
  ...[[], null, 'x', 5, true, [[]], [1, 2]].map(
    (value): BadInput => ['', value, 'unit', 'brief', 'expected a brief: a record, in braces'],
  ),
  ['', {}, 'empty', 'title', 'got nothing; expected a text, in quotes. Add the field.'],
  ['', {}, 'empty', 'drivers', 'expected a list, in square brackets'],
  ['', {}, 'empty', 'space', 'expected a record, in braces'],
];

/** Sections and lists of the wrong shape: one fault each, at the section. */
const shapes: readonly BadInput[] = [
  'space',
  'wanted',
  'amplifier',
  'box',
  'vent',
  'printer',
  'units',
  'weights',
  'air',
]
  .flatMap((section): BadInput[] => [
    [section, [], 'unit', section, 'got a list of 0; expected a record, in braces'],
    [section, null, 'unit', section, 'got null; expected a record, in braces'],
    [section, 'x', 'unit', section, 'got "x"; expected a record, in braces'],
  ])
  .concat([
    ['drivers', {}, 'unit', 'drivers', 'got a record; expected a list, in square brackets'],
    ['drivers', [], 'empty', 'drivers', 'expected at least one driver. Add a driver.'],
    ['drivers.0', 1, 'unit', 'drivers[0]', 'got 1; expected a record, in braces'],
    ['drivers.0', [], 'unit', 'drivers[0]', 'got a list of 0; expected a record, in braces'],
    ['drivers.0.wirings', [], 'empty', 'drivers[0].wirings', 'expected at least one wiring'],
    ['drivers.0.wirings', [[]], 'unit', 'drivers[0].wirings[0]', 'got a list of 0; expected a record'],
    ['vent.faces', 'front', 'unit', 'vent.faces', 'expected a list, in square brackets'],
    ['vent.faces', ['inside'], 'unit', 'vent.faces[0]', 'expected one of "left", "right"'],
    ['vent.counts', [], 'empty', 'vent.counts', 'expected a number of vents'],
    ['units.length', 'ell', 'unit', 'units.length', 'expected one of "mm", "cm", "in"'],
    ['version', 2, 'unit', 'version', 'got 2; expected 1'],
    ['title', '', 'empty', 'title', 'expected a text that is not empty. Write a text.'],
    ['title', 3, 'unit', 'title', 'got 3; expected a text, in quotes'],
    ['drivers.0.name', '', 'empty', 'drivers[0].name', 'Write a text.'],
  ]);

/** Every quantity: without its unit, as a bare number, and beyond what somebody builds, told in the reader's own unit. */
const quantities = (
  [
    ['drivers.0.fs', '30000 Hz', 'from 1 to 20000 Hz'],
    ['drivers.0.fs', '30 kHz', 'from 0.001 to 20 kHz'],
    ['drivers.0.Vas', '0.0005 L', 'from 0.001 to 10000 L'],
    ['drivers.0.Sd', '3 m²', 'from 0.00001 to 2 m²'],
    ['drivers.0.Re', '1 µΩ', 'a number and one of Ω, ohm, kΩ'],
    ['drivers.0.Re', '12 kΩ', 'from 0.000001 to 10 kΩ'],
    ['drivers.0.Le', '3 H', 'from 0.0000001 to 1 H'],
    ['drivers.0.Xmax', '1 m', 'from 0.000001 to 0.2 m'],
    ['drivers.0.Pe', '200 kW', 'from 0.000001 to 100 kW'],
    ['drivers.0.outerDiameter', '262 m', 'from 0.001 to 2 m'],
    ['drivers.0.cutoutDiameter', '232 m', 'from 0.001 to 2 m'],
    ['drivers.0.depth', '0.1 mm', 'from 1 to 2000 mm'],
    ['drivers.0.displacedVolume', '2000 L', 'from 0.0001 to 1000 L'],
    ['space.width', '480 m', 'from 0.02 to 20 m'],
    ['space.height', '1 mm', 'from 20 to 20000 mm'],
    ['space.depth', '420 ft', 'from 0.0656168 to 65.6168 ft'],
    ['space.volume', '55 m', 'a number and one of m³, L, cm³, ft³, in³'],
    ['space.panelThickness', '18 cm2', 'a number and one of m, mm, cm, in, ft'],
    ['space.bracing', '50 m³', 'from 0 to 10 m³'],
    ['wanted.lowest', '0.3 Hz', 'from 1 to 20000 Hz'],
    ['wanted.highest', '120 kHz', 'from 0.001 to 20 kHz'],
    ['wanted.level', '920 dB', 'from 0.01 to 200 dB'],
    ['wanted.fall', '600 dB', 'from 0.01 to 200 dB'],
    ['amplifier.voltage', '1e6 V', 'from'],
    ['amplifier.current', '20000 A', 'from 0.001 to 10000 A'],
    ['amplifier.sourceResistance', '2 kΩ', 'from 0 to 1 kΩ'],
    ['vent.airSpeed', '400 m/s', 'from 0.1 to 340 m/s (peak air speed)'],
    ['vent.smallest', '40 m', 'from 0.001 to 2 m'],
    ['vent.largest', '3 m', 'from 0.001 to 2 m'],
    ['vent.wall', '3 m', 'from 0.0001 to 0.2 m'],
    ['vent.collar', '1 m', 'from 0 to 0.5 m'],
    ['printer.height', '200 m', 'from 0.001 to 2 m'],
    ['printer.width', '0.2 mm', 'from 1 to 2000 mm'],
    ['air.temperature', '-300 °C', 'from -60 to 60 °C'],
    ['air.temperature', '200 °F', 'from -76 to 140 °F'],
    ['air.humidity', '120 %', 'from'],
    ['air.altitude', '20 km', 'from -5 to 11 km'],
  ] as const
).flatMap(([place, text, says]): BadInput[] => {
  const path = place.replace('.0', '[0]');
  const code = says.startsWith('a number and') ? 'unit' : 'out-of-range';
  return [
    [place, text, code, path, says],
    [place, 5, 'unit', path, 'got 5; expected a text: a number and one of'],
  ];
});

const signs: readonly BadInput[] = [
  'drivers.0.Xmax',
  'drivers.0.Pe',
  'drivers.0.depth',
  'space.width',
  'space.panelThickness',
  'wanted.lowest',
  'wanted.level',
  'amplifier.voltage',
  'vent.smallest',
  'printer.height',
].flatMap((place): BadInput[] => {
  const unit = { Pe: 'W', lowest: 'Hz', level: 'dB', voltage: 'V' }[place.split('.').at(-1) as string] ?? 'mm';
  const path = place.replace('.0', '[0]');
  const remedy = 'above zero. Check the sign and the number.';
  return [
    [place, `0 ${unit}`, 'not-positive', path, remedy],
    [place, `\u22125${unit}`, 'not-positive', path, `got "\u22125${unit}"; expected a`],
  ];
});

const spelling: readonly BadInput[] = [
  ['', 'L'],
  ['0,5 L', '0.5 L'],
  ['55,0 L', '55.0 L'],
  ['1,500 L', '1.500 L" or "1500 L'],
  ['1 500 L', '1500 L'],
]
  .flatMap(([text, meant]): BadInput[] =>
    text ? [['space.volume', text, 'unit', 'space.volume', `Did you mean "${meant}"?`]] : [],
  )
  .concat(
    [
      '480',
      '',
      ' ',
      '480 Hz',
      'wide',
      '0x1A mm',
      '480  mm',
      '1e999',
      'NaN mm',
      '3/0 in',
      '12 constructor',
      '4 8 0 mm',
      '--4 mm',
      '480 mm mm',
    ].map(
      (text): BadInput => [
        'space.width',
        text,
        'unit',
        'space.width',
        'expected a number and one of m, mm, cm, in, ft.',
      ],
    ),
    [
      ['space.width', '1e999 mm', 'not-finite', 'space.width', 'expected a finite length'],
      ['space.width', `${'1'.repeat(100_000)}x`, 'unit', 'space.width', '...'],
      ['space.width', '\u202e480 mm', 'unit', 'space.width', 'got "\\u202e480 mm"'],
      ['space.width', '\u001b[2J', 'unit', 'space.width', 'got "\\u001b[2J"'],
    ],
  );

const names: readonly BadInput[] = (
  [
    ['drivers.0.vas', 'Vas'],
    ['drivers.0.QTS', 'Qts'],
    ['drivers.0.Xmx', 'Xmax'],
    ['drivers.0.outer_diameter', 'outerDiameter'],
    ['drivers.0.cutoutDiametre', 'cutoutDiameter'],
    ['drivers.0.wiring', 'wirings'],
    ['space.widht', 'width'],
    ['space.hieght', 'height'],
    ['space.panel thickness', 'panelThickness'],
    ['wanted.lowset', 'lowest'],
    ['wanted.levle', 'level'],
    ['amplifier.voltag', 'voltage'],
    ['vent.airspeed', 'airSpeed'],
    ['vent.colar', 'collar'],
    ['driver', 'drivers'],
    ['wants', 'wanted'],
    ['ampliifer', 'amplifier'],
    ['Title', 'title'],
  ] as const
)
  .map(([place, meant]): BadInput => {
    const path = place.replace('.0', '[0]').replace('.panel thickness', '["panel thickness"]');
    return [place, 'x', 'unknown-field', path, `Did you mean ${meant}?`];
  })
  .concat([
    ['colour', 'red', 'unknown-field', 'colour', 'expected one of the fields $schema, version, title'],
    ['space.colour', 'red', 'unknown-field', 'space.colour', 'Correct the name, or remove the field.'],
    ['\u001b[2J', 1, 'unknown-field', '["\\u001b[2J"]', 'got "\\u001b[2J"'],
    ['\u202ex', 1, 'unknown-field', '["\u202ex"]', 'got "\\u202ex"'],
    ['__proto__x', 1, 'unknown-field', '__proto__x', 'one of the fields'],
    ['k'.repeat(100_000), 1, 'unknown-field', `["${'k'.repeat(100_000)}"]`, '...'],
  ]);

const missing: readonly BadInput[] = [
  ['drivers.0.Vas', ABSENT, 'empty', 'drivers[0]', 'Add one of these: Vas, Mms, Cms, Rms or Bl.'],
  ['drivers.0.Re', ABSENT, 'empty', 'drivers[0]', 'cannot be derived'],
  ['drivers.0.Sd', ABSENT, 'empty', 'drivers[0]', 'Sd'],
  ['drivers.0.Xmax', ABSENT, 'empty', 'drivers[0].Xmax', 'got nothing; expected a text: a number and one of m, mm'],
  ['drivers.0.name', ABSENT, 'empty', 'drivers[0].name', 'expected a text, in quotes. Add the field.'],
  ['space.width', ABSENT, 'empty', 'space.width', 'got nothing; expected a text: a number and one of m, mm'],
  ['wanted.level', ABSENT, 'empty', 'wanted.level', 'a number and one of dB'],
  ['amplifier', ABSENT, 'empty', 'amplifier', 'expected a record, in braces. Add the field.'],
  ['printer.width', ABSENT, 'empty', 'printer.width', 'Add the field.'],
];

const numbers: readonly BadInput[] = [
  ['drivers.0.Qts', 0, 'out-of-range', 'drivers[0].Qts', 'expected a number from 0.01 to 10000'],
  ['drivers.0.Qts', '0.36', 'unit', 'drivers[0].Qts', 'expected a number, without quotes'],
  ['drivers.0.Qes', -1, 'out-of-range', 'drivers[0].Qes', 'got -1'],
  ['box.QL', 0.01, 'out-of-range', 'box.QL', 'got 0.01; expected a number from 1 to 10000'],
  ['box.QA', 0.5, 'out-of-range', 'box.QA', 'from 1 to 10000'],
  ['box.QP', 1e9, 'out-of-range', 'box.QP', 'from 1 to 10000'],
  ['box.fillGain', 2, 'out-of-range', 'box.fillGain', 'from 1 to 1.4'],
  ['vent.bends', 0.5, 'out-of-range', 'vent.bends', 'a whole number from 0 to 1'],
  ['vent.counts', [9], 'out-of-range', 'vent.counts[0]', 'a whole number from 1 to 6'],
  ['weights.deep', -1, 'out-of-range', 'weights.deep', 'from 0 to 100'],
  ['drivers.0.wirings', [{ series: 5 }], 'out-of-range', 'drivers[0].wirings[0].series', 'from 1 to 4'],
  ['drivers.0.wirings', [{ isobaric: 1 }], 'unit', 'drivers[0].wirings[0].isobaric', 'true or false, without quotes'],
  ['drivers.0.wirings', [{ isobaric: true }], 'inconsistent', 'drivers[0].wirings[0].isobaric', 'an even number'],
  ['drivers.0.wirings', [{ series: 4, parallel: 4 }], 'out-of-range', 'drivers[0].wirings[0]', 'at most 4 drivers'],
];

/** Amplifiers in volts and in watts. */
const amplifiers: readonly BadInput[] = (
  [
    [{}, 'empty', 'voltage', 'instead of it the rated power and its load (power and into)'],
    [{ power: '100 W' }, 'empty', 'into', 'the nominal load into which it gives 100 W'],
    [{ into: '8 Ω' }, 'empty', 'power', 'the rated power into 8 Ω'],
    [
      { power: '100 W', into: '8 Ω', voltage: '25 V' },
      'conflict',
      'power',
      'got "100 W"; expected either power or voltage, 25 V; 100 W into 8 Ω is 28.3 V and 3.54 A.',
    ],
    [{ power: '100 W', into: '8 Ω', current: '6 A' }, 'conflict', 'power', 'either power or current, 6 A'],
    [{ power: '100 V', into: '8 Ω' }, 'unit', 'power', 'a number and one of W'],
    [{ voltage: '25 V', leastLoad: '4 V' }, 'unit', 'leastLoad', 'a number and one of Ω'],
    [{ voltage: '25 V', leastLoad: '4 kΩ' }, 'out-of-range', 'leastLoad', 'from 0.0001 to 1 kΩ'],
    [{ voltage: '25 V', filter: {} }, 'empty', 'filter.order', 'Add the field.'],
    [{ voltage: '25 V', filter: { order: 5, corner: '25 Hz' } }, 'out-of-range', 'filter.order', 'from 1 to 4'],
    [{ voltage: '25 V', filter: { order: 2, corner: '25' } }, 'unit', 'filter.corner', 'a number and one of Hz'],
    [
      { voltage: '25 V', filter: { order: 4, corner: '25 Hz', Q: 1 } },
      'inconsistent',
      'filter.Q',
      'got 1; expected no Q',
    ],
    [{ voltage: '25 V', filter: { order: 2, corner: '25 Hz', Q: 99 } }, 'out-of-range', 'filter.Q', 'from 0.05 to 50'],
  ] as const
).map(([amplifier, code, field, says]): BadInput => ['amplifier', amplifier, code, `amplifier.${field}`, says]);

/** What is pinned. */
const pins: readonly BadInput[] = [
  ['space.exactly', 'width', 'unit', 'space.exactly', 'expected a list, in square brackets'],
  ['space.exactly', [], 'empty', 'space.exactly', 'expected an edge. Name one.'],
  ['space.exactly', ['length'], 'unit', 'space.exactly[0]', 'expected one of "width", "height", "depth"'],
  [
    'space.exactly',
    ['width', 'height', 'depth'],
    'inconsistent',
    'space.volume',
    'got "55 L"; expected at least 68.54 L, since space.exactly holds all three edges',
  ],
  ['box.tuning', '30', 'unit', 'box.tuning', 'a number and one of Hz'],
  ['box.tuning', '0 Hz', 'not-positive', 'box.tuning', 'above zero'],
  ['wanted.safeFrom', 40, 'unit', 'wanted.safeFrom', 'got 40; expected a text'],
];

const sheet = (more: object): unknown[] => [
  {
    name: 'a sheet without Vas',
    fs: '42 Hz',
    Qts: 0.38,
    Qes: 0.43,
    Sd: '136 cm²',
    Re: '3.4 Ω',
    Xmax: '6 mm',
    Pe: '60 W',
    outerDiameter: '167 mm',
    cutoutDiameter: '146 mm',
    depth: '78 mm',
    ...more,
  },
];

/** Sheets with a sensitivity instead of Vas. */
const sensitivities: readonly BadInput[] = (
  [
    [{}, 'empty', '', 'A sensitivity with its drive (sensitivity, sensitivityAt) can replace Vas.'],
    [
      { sensitivity: '88 dB' },
      'empty',
      '.sensitivityAt',
      'the drive at which the sensitivity is 88 dB: "1 W" or "2.83 V"',
    ],
    [
      { sensitivity: '88 dB', sensitivityAt: '1 W' },
      'empty',
      '.nominalImpedance',
      'the impedance into which the drive is 1 W',
    ],
    [{ sensitivity: '88 dB', sensitivityAt: '1 V' }, 'unit', '.sensitivityAt', 'expected one of "1 W", "2.83 V"'],
    [{ sensitivity: '88', sensitivityAt: '1 W' }, 'unit', '.sensitivity', 'a number and one of dB'],
    [
      { sensitivity: '190 dB', sensitivityAt: '2.83 V' },
      'inconsistent',
      '.sensitivity',
      'got "190 dB"; expected a level that leads to a Vas',
    ],
  ] as const
).map(([more, code, field, says]): BadInput => ['drivers', sheet(more), code, `drivers[0]${field}`, says]);

/** Each right alone: both are named, as they were written. */
const contradictions: readonly BadInput[] = [
  [
    'drivers.0.Sd',
    '900 cm²',
    'inconsistent',
    'drivers[0].Sd',
    'got "900 cm²"; expected less than the area of a disc of outerDiameter, 262 mm: 539.1 cm²',
  ],
  [
    'drivers.0.Xmax',
    '150 mm',
    'inconsistent',
    'drivers[0].Xmax',
    'got "150 mm"; expected a one-way travel less than depth, 118 mm',
  ],
  [
    'drivers.0.displacedVolume',
    '500 L',
    'inconsistent',
    'drivers[0].displacedVolume',
    'outerDiameter, 262 mm, and depth, 118 mm: 6.362 L',
  ],
  [
    'drivers.0.cutoutDiameter',
    '300 mm',
    'inconsistent',
    'drivers[0].cutoutDiameter',
    'got "300 mm"; expected less than outerDiameter, 262 mm',
  ],
  [
    'drivers.0.outerDiameter',
    '9 in',
    'inconsistent',
    'drivers[0].cutoutDiameter',
    'expected less than outerDiameter, 9 in',
  ],
  ['drivers.0.coneDiameter', '300 mm', 'inconsistent', 'drivers[0].coneDiameter', 'less than outerDiameter, 262 mm'],
  ['drivers.0.Qts', 0.5, 'inconsistent', 'drivers[0].Qts', 'got 0.5; expected less than Qes, 0.4'],
  ['drivers.0.Mms', '10 g', 'inconsistent', 'drivers[0].Mms', ' g, from Mms ='],
  ['drivers.0.Bl', '3Tm', 'inconsistent', 'drivers[0].Bl', 'got "3Tm"; expected about'],
  ['drivers.0.coil', { LR2: { R2: '3 Ω' } }, 'empty', 'drivers[0].coil.LR2.L2', 'one of H, mH, µH'],
  ['space.panelThickness', '190 mm', 'inconsistent', 'space.panelThickness', 'less than half of space.height, 340 mm'],
  ['space.bracing', '60 L', 'inconsistent', 'space.bracing', 'less than the volume of the whole space, 55 L'],
  ['wanted.lowest', '200Hz', 'inconsistent', 'wanted.lowest', 'got "200Hz"; expected less than wanted.highest, 120 Hz'],
  ['wanted.safeFrom', '130 Hz', 'inconsistent', 'wanted.safeFrom', 'less than wanted.highest, 120 Hz'],
  ['vent.smallest', '5 in', 'inconsistent', 'vent.smallest', 'got "5 in"; expected at most vent.largest, 120 mm'],
  ['air.pressure', '100 kPa', 'conflict', 'air.altitude', 'got "0 m"; expected a pressure or an altitude, not both'],
];

const sizes: readonly BadInput[] = [
  ['title', 'x'.repeat(9e6), 'out-of-range', 'title', 'expected a text of at most 200 characters. Shorten it.'],
  ['note', 'x'.repeat(9e6), 'out-of-range', 'note', 'at most 20000 characters'],
  ['space.width', ' '.repeat(9e6), 'unit', 'space.width', '...'],
  [
    'drivers',
    Array(50_000).fill(1),
    'out-of-range',
    'drivers',
    'got a list of 50000; expected a list of at most 256 items',
  ],
  ['drivers', Array(2_000_000).fill({}), 'out-of-range', 'drivers', 'got a list of 2000000'],
  ['vent.counts', Array(1000).fill(1), 'out-of-range', 'vent.counts', 'at most 256 items'],
  [
    'space',
    Object.fromEntries(Array.from({ length: 100_000 }, (_, i) => [`k${i}`, 1])),
    'out-of-range',
    'space',
    'got "a record of 100000 fields"',
  ],
  ['deep', JSON.parse(`${'['.repeat(5000)}${']'.repeat(5000)}`), 'unknown-field', 'deep', 'one of the fields'],
];

/** Two hundred and more briefs that must be refused. */
export const badInputs: readonly BadInput[] = [
  ...wholes,
  ...shapes,
  ...quantities,
  ...signs,
  ...spelling,
  ...names,
  ...missing,
  ...numbers,
  ...amplifiers,
  ...pins,
  ...sensitivities,
  ...contradictions,
  ...sizes,
];
