import { publication } from 'soakproof';

// `site` is the address that readers use, `base` the folder it stands in ('/' or '/reports/').
export default publication({
  title: 'Bench notes',
  byline: 'Invented measurements of invented devices, to show how Soakproof works',
  site: 'https://bench.example',
  base: '/',
  contact: 'rowan.alder@bench.example',
  licence: { words: 'CC-BY-4.0', data: 'CC0-1.0' },
  funding: 'nobody paid for anything here, since everything is invented',
  about: 'about.md',
  navigation: ['notes', 'devices', 'runs', 'compare', 'method', 'about', 'search'],
  accent: { light: '#14506e', dark: '#93c7e6' },
  // The guide has it in an example.
  harmless: ['me@bench.example'],
  // The user's guide is a part of this site, since it shows the tool.
  guide: true,
});
