/** Baseline: Astro alone, printing as many bare pages, with the same cache. */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const CONFIG = `import { defineConfig } from 'astro/config';
export default defineConfig({ output: 'static', devToolbar: { enabled: false }, experimental: { incrementalBuild: true }, cacheDir: './.cache/astro', outDir: './dist' });
`;

const PAGE = (count: number) => `---
export const getStaticPaths = () => Array.from({ length: ${count} }, (_, n) => ({ params: { n: String(n) }, props: { n }, cacheKey: String(n) }));
const { n } = Astro.props;
---
<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{n}</title></head><body><p>Page {n}</p></body></html>
`;

/** Writes the project; \`node build.mjs\` in it builds it. */
export function writeBareSite(root: string, nodeModules: string, pages: number): void {
  mkdirSync(join(root, 'src', 'pages'), { recursive: true });
  symlinkSync(nodeModules, join(root, 'node_modules'), 'dir');
  writeFileSync(join(root, 'package.json'), '{ "type": "module" }\n');
  writeFileSync(join(root, 'astro.config.mjs'), CONFIG);
  writeFileSync(join(root, 'src', 'pages', '[n].astro'), PAGE(pages));
  writeFileSync(
    join(root, 'build.mjs'),
    "import { build } from 'astro';\nawait build({ root: process.cwd(), logLevel: 'error' });\n",
  );
}
