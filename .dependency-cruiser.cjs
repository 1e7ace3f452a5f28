/* The house: an arrow means "imports"; nothing points upward. See DEVELOPERS.md. */
const rooms = {
  units: [],
  decay: ['units'],
  capacity: ['units'],
  forecast: ['units', 'decay', 'capacity'],
  season: ['units', 'decay', 'capacity', 'forecast'],
  storm: ['units', 'decay', 'capacity', 'forecast'],
  drawing: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm'],
  notify: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing'],
  register: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing'],
  service: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing', 'notify', 'register'],
  web: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing', 'notify', 'register', 'service'],
  cli: ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing', 'notify', 'register', 'service', 'web'],
};
const pure = ['units', 'decay', 'capacity', 'forecast', 'season', 'storm', 'drawing', 'notify'];

module.exports = {
  forbidden: [
    ...Object.entries(rooms).map(([room, below]) => ({
      name: `house-${room}`,
      comment: `${room}/ imports only itself and the rooms below it`,
      severity: 'error',
      from: { path: `^src/${room}/` },
      to: { path: '^src/', pathNot: `^src/(${[room, ...below].join('|')})/` },
    })),
    {
      name: 'only-register-knows-sql',
      comment: 'register/ alone imports kysely and a database driver',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/register/' },
      to: { path: 'node_modules/(kysely|better-sqlite3|pg)/' },
    },
    {
      name: 'pure-rooms-have-no-effects',
      comment: 'pure rooms import no core module of Node and no clock, mail, web or database library',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')})/` },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'pure-rooms-use-no-library',
      comment: 'pure rooms import no library; drawing/ alone has the three of d3 that compute scales and paths',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')})/`, pathNot: '^src/drawing/' },
      to: { path: 'node_modules/' },
    },
    {
      name: 'drawing-uses-only-d3',
      severity: 'error',
      from: { path: '^src/drawing/' },
      to: { path: 'node_modules/', pathNot: 'node_modules/(@types/)?d3-(array|scale|shape)/' },
    },
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    { name: 'nothing-unresolvable', severity: 'error', from: { path: '^src/' }, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node'],
    },
  },
};
