// The direction of imports, as DEVELOPERS.md draws the pipe: each folder may import from the ones that are listed for it.
// Checked by dependency-cruiser, type imports included.

// What all may use, and what imports nothing of the project but each other.
const ROOT = ['problem.ts', 'hidden-characters.ts'];

const MAY_IMPORT = {
  statistics: [],
  quantities: [...ROOT, 'statistics'],
  intake: [...ROOT, 'statistics', 'quantities'],
  figures: [...ROOT, 'statistics', 'quantities', 'intake'],
  register: [...ROOT, 'statistics', 'quantities', 'intake', 'figures'],
  words: [...ROOT, 'quantities', 'figures', 'register'],
  plots: [...ROOT, 'statistics', 'quantities', 'intake', 'figures', 'register'],
  pictures: [],
  search: [],
  compute: [...ROOT, 'statistics', 'quantities', 'intake', 'figures', 'register', 'words', 'plots', 'pictures', 'search'],
  print: [...ROOT, 'compute'],
  // The reader's browser compares and draws by stage 1's own functions, so that its figures and pictures are the same to the last bit.
  // That none of them needs Node when it runs is held by test/browser/free-of-node.test.ts: types may come from anywhere above.
  browser: [...ROOT, 'statistics', 'quantities', 'intake', 'figures', 'plots', 'compute', 'search'],
  commands: [...ROOT, 'statistics', 'quantities', 'intake', 'figures', 'register', 'words', 'plots', 'compute', 'print'],
};

// The same within the large folders: each room may import from the ones before it, rooms between bars not from each other. `.` is the
// folder's own files, its front door; a file named here stands apart from its room, since it only says what there is.
const ROOMS = {
  intake: ['log.ts', 'cells', 'sheet', 'report', 'rows', 'time', 'columns', '.'],
  register: ['rules.ts', 'register.ts', 'yaml', 'values', 'sections', 'files', 'resolved', 'sealed', 'portable', '.'],
  words: ['script/script.ts', 'rules/rules.ts', 'written.ts', 'expression', 'stated', 'page', 'rules', 'directives', 'script', '.'],
  plots: ['drawing', 'stills', 'data', 'against|deltas|power-by-phase|scaling|scores|stability|step-response|thermal|trace', '.'],
  compute: [
    ...['store', 'models', 'results.ts', 'project', 'cite', 'feeds', 'steps', 'contents', 'comparison', 'record-copies'],
    ...['published-state', 'data', 'linked-data', 'pages', 'video', 'discovery', 'archive', 'outgoing', 'site', '.'],
  ],
};

// One door for each library: replacing it touches one folder or file.
const DOORS = {
  papaparse: 'intake/sheet',
  unitmath: 'quantities',
  yaml: 'register',
  valibot: 'register',
  'spdx-license-list': 'register',
  unified: 'words',
  'webvtt-parser': 'words/script',
  diff: 'words/script',
  vega: 'plots',
  '@resvg/resvg-js': 'plots',
  sharp: 'pictures/make.ts',
  minisearch: 'search',
  feed: 'compute/feeds/atom.ts',
  fflate: '(compute/archive|intake/sheet)',
  astro: 'print',
  koffi: 'print/exchange.ts',
};

const place = (name) => (name.endsWith('.ts') ? `^src/${name.replace('.', '\\.')}$` : `^src/${name}/`);

const directions = Object.entries(MAY_IMPORT).map(([from, to]) => ({
  name: `${from}-imports-only-what-stands-above-it`,
  severity: 'error',
  from: { path: place(from) },
  to: { path: '^src/', pathNot: [place(from), ...to.map(place)] },
}));

const roomPath = (folder, room) => (room === '.' ? `^src/${folder}/[^/]+$` : place(`${folder}/${room}`));

const rooms = Object.entries(ROOMS).flatMap(([folder, order]) => {
  const single = order.filter((room) => room.endsWith('.ts')).map((room) => place(`${folder}/${room}`));
  const paths = (entries) => entries.flatMap((entry) => entry.split('|').map((room) => roomPath(folder, room)));
  return order.flatMap((entry, i) =>
    entry.split('|').map((room) => ({
      name: `${folder}-${room.replace(/\W+/g, '-')}-imports-only-rooms-before-it`,
      severity: 'error',
      from: { path: roomPath(folder, room), ...(room.endsWith('.ts') ? {} : { pathNot: single }) },
      to: { path: `^src/${folder}/`, pathNot: [roomPath(folder, room), ...paths(order.slice(0, i))] },
    })),
  );
});

// A room that the list leaves out would be free of it.
const listed = Object.entries(ROOMS).map(([folder, order]) => ({
  name: `${folder}-rooms-have-their-place`,
  severity: 'error',
  from: { path: `^src/${folder}/`, pathNot: order.flatMap((entry) => entry.split('|').map((room) => roomPath(folder, room))) },
  to: {},
}));

const doors = Object.entries(DOORS).map(([library, door]) => ({
  name: `${library.replace(/\W+/g, '-')}-has-one-door`.replace(/^-/, ''),
  severity: 'error',
  from: { path: '^src/', pathNot: [place(door), '\\.astro$', '^src/env\\.d\\.ts$'] },
  to: { path: `^node_modules/${library}/` },
}));

module.exports = {
  forbidden: [
    ...directions,
    ...rooms,
    ...listed,
    ...doors,
    {
      name: 'the-root-imports-nothing',
      severity: 'error',
      from: { path: ROOT.map(place) },
      to: { path: '.', pathNot: ROOT.map(place) },
    },
    { name: 'words-never-sees-a-log', severity: 'error', from: { path: place('words') }, to: { path: place('intake') } },
    {
      name: 'pages-read-results-only',
      severity: 'error',
      from: { path: '^src/(pages|layouts|components|styles)/' },
      to: {
        path: '^src/',
        pathNot: ['^src/(pages|layouts|components|styles)/', '^src/compute/(read-results|results)\\.ts$', '^src/browser/'],
      },
    },
    {
      name: 'nobody-knows-pages',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(pages|layouts|components|styles)/' },
      to: { path: '^src/(pages|layouts|components|styles)/' },
    },
    {
      name: 'pure-below-compute',
      severity: 'error',
      from: { path: '^src/(problem\\.ts|hidden-characters\\.ts|statistics|quantities|intake|figures|register|words|browser)' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-circles',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'found',
      severity: 'error',
      from: { path: '^src/' },
      to: { couldNotResolve: true, pathNot: '^(astro:|(mdast|hast|unist|vite)$)' },
    },
    { name: 'nothing-of-the-tests', severity: 'error', from: { path: '^src/' }, to: { path: '^test/' } },
    {
      name: 'not-from-tests',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev'], pathNot: '^node_modules/@types/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.mjs', '.js', '.astro'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
