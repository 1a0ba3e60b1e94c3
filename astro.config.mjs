import { publication } from 'soakproof';

// `site` is the address that readers use, `base` the folder it stands in ('/' or '/reports/').
export default publication({
  title: 'Bench notes',
  byline: 'Invented measurements of invented devices, to show how Soakproof works',
  site: 'https://bench.example',
  base: '/',
  // The user's guide is a part of this site, since it shows the tool.
  guide: true,
});
