// Who may import whom. `npm test` holds it; a breach is told with its reason and its cure.

/** The rooms of the engine, each with the other rooms of the engine it may import. */
const rooms = {
  measure: [],
  method: ['measure'],
  marking: ['method', 'measure', 'water'],
  water: ['method', 'measure'],
  inspection: ['marking', 'method', 'measure', 'water', 'picture'],
  picture: ['method', 'measure', 'water'],
  takeoff: ['measure', 'method'],
  sketch: ['takeoff', 'measure'],
  exam: ['method', 'measure'],
  written: ['method', 'measure', 'inspection', 'marking', 'tracing'],
  statistics: [],
  tracing: ['marking', 'method', 'measure'],
  tally: ['tracing', 'marking', 'method', 'measure', 'statistics'],
  'order-diagram': ['method'],
  simulation: ['marking', 'method', 'measure', 'takeoff'],
  certificate: ['exam', 'method'],
  credential: ['certificate'],
  competence: ['exam', 'tracing', 'written'],
  'job-fit': [],
  statement: [],
  record: [],
  compile: ['measure', 'method', 'takeoff', 'written', 'exam', 'water', 'picture', 'marking'],
};

/** The packages the engine may use, and the rooms that may use each (no list: all of them). */
const packages = {
  'fraction.js': null,
  'pure-rand': null,
  xstate: null,
  yaml: ['compile'],
  mathjs: ['takeoff'],
  devalue: ['compile'],
};

const inRoom = (room) => `^src/engine/${room}/`;
const anyOf = (names) => `(${names.join('|').replaceAll('.', '[.]')})`;
const serverFile =
  '(^src/app[.]d[.]ts$|^src/(hooks|instrumentation)[.]server[.]|[.]server[.]ts$|/[+]server[.]ts$)';

const roomRules = Object.entries(rooms).map(([room, others]) => ({
  name: `engine-${room}`,
  comment:
    `The engine is built in layers, so that each room can be read and tested without those above it. ` +
    `${room} may import ${others.length > 0 ? others.join(', ') : 'no other room'} and the files ` +
    `directly in src/engine. Cure: take what you need as an argument, or move the shared idea down.`,
  severity: 'error',
  from: { path: inRoom(room) },
  to: { path: '^src/engine/[^/]+/', pathNot: [room, ...others].map(inRoom) },
}));

const packageRules = Object.entries(packages)
  .filter(([, allowed]) => allowed !== null)
  .map(([name, allowed]) => ({
    name: `engine-${name}`,
    comment:
      `${name} belongs to ${allowed.join(', ')} alone, so that the other rooms stay free of its types ` +
      `and weight. Cure: have that room hand over plain values.`,
    severity: 'error',
    from: { path: '^src/engine/', pathNot: allowed.map(inRoom) },
    to: { path: `^node_modules/${anyOf([name])}/` },
  }));

module.exports = {
  forbidden: [
    {
      name: 'no-circle',
      comment:
        'Modules in a circle can only be understood, tested and loaded together. Cure: move what both ' +
        'need into a third file, or pass it as an argument.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'not-found',
      comment:
        'This import leads nowhere. Cure: write #engine/, #server/ or #ui/ with the file extension, or ' +
        'add the package to package.json with an exact version.',
      severity: 'error',
      from: { path: '^(src|tests)/' },
      to: {
        couldNotResolve: true,
        // Made by the framework and the message compiler while building.
        pathNot: '^([$](app|env|service-worker)(/|$)|[.]/[$]types([.]js)?$)|/messages/generated/',
      },
    },
    {
      name: 'engine-alone',
      comment:
        'The engine takes values and returns values; whoever uses it brings the effects. Cure: take ' +
        'what you need as an argument.',
      severity: 'error',
      from: { path: '^src/engine/' },
      to: { path: '^(src|content|tests)/', pathNot: '^src/engine/' },
    },
    {
      name: 'engine-no-node',
      comment:
        'The engine runs in a browser as well as on the server. Cure: take bytes, text, time or chance ' +
        'as an argument; reading and writing belong to src/server and src/cli.',
      severity: 'error',
      from: { path: '^src/engine/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'engine-packages',
      comment:
        `The engine uses few packages, all without effects: ${Object.keys(packages).join(', ')}. Cure: ` +
        'keep the package at the edge that needs it; if it truly belongs here, add it to the list.',
      severity: 'error',
      from: { path: '^src/engine/' },
      to: { path: '^node_modules/', pathNot: `^node_modules/${anyOf(Object.keys(packages))}/` },
    },
    ...packageRules,
    {
      name: 'engine-known-room',
      comment:
        'A new room of the engine needs its place in the layers. Cure: name it in `rooms`, at the top ' +
        'of the file that holds these rules, with the rooms it may import.',
      severity: 'error',
      from: { path: '^src/engine/[^/]+/', pathNot: Object.keys(rooms).map(inRoom) },
      to: {},
    },
    {
      name: 'engine-shared-file',
      comment:
        'Files directly in src/engine are shared by all its rooms, so they import none. Cure: move the ' +
        'file into the room it leans on.',
      severity: 'error',
      from: { path: '^src/engine/[^/]+$' },
      to: { path: '^src/engine/[^/]+/' },
    },
    {
      name: 'formula-parser-at-compile-time',
      comment:
        'The parser of formulas is heavy and is needed once, when content is compiled: what it makes is ' +
        'plain data. Cure: work on a compiled Formula.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/engine/(compile/|takeoff/parse-formula[.])' },
      to: { path: '^src/engine/takeoff/parse-formula[.]|^node_modules/mathjs/' },
    },
    ...roomRules,
    {
      name: 'ui-engine-only',
      comment:
        'Parts of screens show values and report what was done; they run in the browser. Cure: load in ' +
        'a route and pass it in as a prop.',
      severity: 'error',
      from: { path: '^src/ui/' },
      to: { path: '^src/', pathNot: '^src/(ui|engine)/' },
    },
    {
      name: 'server-engine-only',
      comment:
        'The server knows nothing of screens. Cure: return values; let routes choose how to show them.',
      severity: 'error',
      from: { path: '^src/server/' },
      to: { path: '^src/', pathNot: '^src/(server|engine)/' },
    },
    {
      name: 'cli-no-screens',
      comment:
        'The command line uses the engine and the server. Cure: move the shared idea into either.',
      severity: 'error',
      from: { path: '^src/cli/' },
      to: { path: '^src/', pathNot: '^src/(cli|server|engine)/' },
    },
    {
      name: 'setup-alone',
      comment:
        'The setup runs before any package is installed and on an older Node. Cure: use only Node and ' +
        'plain JavaScript here.',
      severity: 'error',
      from: { path: '^src/setup/' },
      to: { pathNot: '^src/setup/', dependencyTypesNot: ['core'] },
    },
    {
      name: 'routes-rooms',
      comment: 'A route is thin: load, call, show. Cure: the work belongs in ui, server or engine.',
      severity: 'error',
      from: { path: '^src/(routes/|[^/]+$)' },
      to: { path: '^src/', pathNot: '^src/(routes|ui|engine|server)/|^src/[^/]+$' },
    },
    {
      name: 'routes-server-from-server-files',
      comment:
        'What a page imports is sent to the browser: keys and the database must not be. Cure: import ' +
        'it in +page.server.ts, +layout.server.ts or +server.ts and pass on values.',
      severity: 'error',
      from: { path: '^src/(routes/|[^/]+$)', pathNot: serverFile },
      to: { path: '^src/server/' },
    },
    {
      name: 'no-tests-from-src',
      comment: 'The product does not depend on its tests. Cure: move what it needs into src.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '/messages/generated/|^[.]svelte-kit/|^build/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'browser', 'import', 'types', 'node', 'default'],
      extensions: ['.ts', '.js', '.svelte', '.d.ts'],
    },
  },
};
