/** A floor of core imports only from the floors before it. */
const floors = [
  'fault',
  'quantity',
  'numeric',
  'network',
  'simd',
  'air',
  'driver',
  'duct',
  'vent',
  'space',
  'enclosure',
  'filter',
  'response',
  'alignment',
  'limit',
  'room',
  'tolerance',
  'laws',
];
const core = '^packages/core/src/';
const upwards = floors.slice(0, -1).map((floor, i) => ({
  name: `floor-${floor}`,
  severity: 'error',
  comment: `${floor} stands below ${floors.slice(i + 1).join(', ')}`,
  from: { path: `${core}${floor}/` },
  to: { path: `${core}(${floors.slice(i + 1).join('|')})/` },
}));

/** A floor of transient imports only from the floors before it. */
const rooms = ['signal', 'recording', 'simulation', 'timeline', 'burst'];
const transient = '^packages/transient/src/';
const later = rooms.slice(0, -1).map((room, i) => ({
  name: `transient-${room}`,
  severity: 'error',
  comment: `${room} stands below ${rooms.slice(i + 1).join(', ')}`,
  from: { path: `${transient}${room}/` },
  to: { path: `${transient}(${rooms.slice(i + 1).join('|')})/` },
}));

/** A floor of workshop imports only from the floors before it. */
const benches = ['words', 'outline', 'mesh', 'shape', 'panel', 'nesting', 'drawing', 'solid', 'dossier'];
const workshop = '^packages/workshop/src/';
const after = benches.slice(0, -1).map((bench, i) => ({
  name: `workshop-${bench}`,
  severity: 'error',
  comment: `${bench} stands below ${benches.slice(i + 1).join(', ')}`,
  from: { path: `${workshop}${bench}/` },
  to: { path: `${workshop}(${benches.slice(i + 1).join('|')})/` },
}));

/** A folder of airspring imports only from those before it: the way of the data. */
const stages = ['job', 'brief', 'kind', 'search', 'record', 'workers', 'standing', 'words', 'page', 'command'];
const airspring = '^packages/airspring/src/';
const backwards = stages.slice(0, -1).map((stage, i) => ({
  name: `airspring-${stage}`,
  severity: 'error',
  comment: `${stage} comes before ${stages.slice(i + 1).join(', ')}`,
  from: { path: `${airspring}${stage}/` },
  to: { path: `${airspring}(${stages.slice(i + 1).join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...upwards,
    ...backwards,
    ...later,
    ...after,
    {
      name: 'airspring-unknown',
      severity: 'error',
      comment: 'each folder of airspring is a stage named in this list',
      from: { path: `${airspring}[^/]+/`, pathNot: `${airspring}(${stages.join('|')})/` },
      to: {},
    },
    {
      name: 'kinds-through-the-door',
      severity: 'error',
      comment: 'no stage after kind knows a kind of box by name: they come as values',
      from: { path: `${airspring}(search|record|words)/` },
      to: { path: `${airspring}kind/(closed|vented)\\.ts` },
    },
    {
      name: 'floor-unknown',
      severity: 'error',
      comment: 'each file of core stands on a floor named in this list',
      from: { path: core, pathNot: `${core}(${floors.join('|')})/` },
      to: {},
    },
    {
      name: 'core-alone',
      severity: 'error',
      comment: 'core depends on nothing: no package, no node: module, no sibling',
      from: { path: core },
      to: { pathNot: core },
    },
    {
      name: 'transient-unknown',
      severity: 'error',
      comment: 'each file of transient stands on a floor named in this list',
      from: { path: transient, pathNot: `${transient}(${rooms.join('|')})/` },
      to: {},
    },
    {
      name: 'transient-on-core',
      severity: 'error',
      comment: 'transient imports core; decoders of recordings are its only other packages, loaded on demand',
      from: { path: transient },
      to: { pathNot: ['^packages/(transient|core)/src/', 'node_modules/(@wasm-audio-decoders/|mpg123-decoder/)'] },
    },
    {
      name: 'decoders-on-demand',
      severity: 'error',
      comment: 'who reads WAV alone needs no decoder installed',
      from: { path: transient },
      to: { path: 'node_modules/', dependencyTypesNot: ['dynamic-import', 'type-only'] },
    },
    {
      name: 'workshop-unknown',
      severity: 'error',
      comment: 'each file of workshop stands on a floor named in this list',
      from: { path: workshop, pathNot: `${workshop}(${benches.join('|')})/` },
      to: {},
    },
    {
      name: 'workshop-on-core',
      severity: 'error',
      comment: 'workshop imports core, and a package each for drawings and archives',
      from: { path: workshop },
      to: { pathNot: ['^packages/(workshop|core)/src/', 'node_modules/(@tarikjabiri/dxf|fflate)/'] },
    },
    {
      name: 'writers-on-demand',
      severity: 'error',
      comment: 'a page that shows a vent reads no writer of drawings and archives that are not asked for',
      from: { path: workshop },
      to: { path: 'node_modules/', dependencyTypesNot: ['dynamic-import', 'type-only'] },
    },
    {
      name: 'airspring-on-core',
      severity: 'error',
      comment:
        'airspring imports core and the schema library, nothing else of the workspace but what its command loads on demand',
      from: { path: '^packages/airspring/src/', pathNot: '^packages/airspring/src/command/' },
      to: { path: '^(packages|docs-site|tests)/', pathNot: ['^packages/(airspring|core)/src/', 'node_modules'] },
    },
    {
      name: 'command-on-demand',
      severity: 'error',
      comment: 'who does not play recordings needs no package for it',
      from: { path: '^packages/airspring/src/command/' },
      to: {
        path: '^(packages|docs-site|tests)/',
        pathNot: ['^packages/(airspring|core)/src/', 'node_modules'],
        dependencyTypesNot: ['dynamic-import', 'type-only'],
      },
    },
    {
      name: 'node-in-command-only',
      severity: 'error',
      comment: 'the library runs in a browser as well; files and terminals belong to the command',
      from: { path: '^packages/[^/]+/src/', pathNot: '^packages/airspring/src/command/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-development-packages',
      severity: 'error',
      from: { path: '^packages/[^/]+/src/' },
      // What a user may install beside is a peer, and installed for the tests.
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['npm-peer'] },
    },
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    // 'astro:content' is made by the generator of the site.
    { name: 'no-dead-ends', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '^astro:' } },
  ],
  options: {
    doNotFollow: { path: ['node_modules'] },
    exclude: { path: ['/dist(\\.next)?/', '/\\.astro/', '\\.config\\.ts$'] },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['@airspring/source', 'import', 'node', 'default'],
    },
  },
};
