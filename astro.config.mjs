import { defineConfig } from 'astro/config';
import { soakproof } from './src/print/integration.ts';

// `site` is the address that readers use, `base` the folder it stands in ('/' or '/reports/').
export default defineConfig({
  site: 'https://bench.example',
  base: '/',
  integrations: [
    soakproof({ title: 'Bench notes', byline: 'Invented measurements of invented devices, to show how Soakproof works' }),
  ],
});
