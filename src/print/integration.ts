/** What the project asks of Astro, in build and in dev, so that astro.config.mjs holds only what an author decides. */
import { pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { addressOf } from '../compute/project/site-facts.ts';
import { type SiteOptions, settingsOf } from '../compute/project/site-options.ts';
import { codeFolder } from '../compute/store/places.ts';
import { accentOf } from './accent.ts';
import { developing } from './dev.ts';

/** Output, cache, content security policy and the site's name; in dev also stage 1 and the refreshing of pages. */
export function soakproof(options: SiteOptions): AstroIntegration & { readonly named: SiteOptions } {
  return {
    name: 'soakproof',
    // Stage 1 reads it from here.
    named: options,
    hooks: {
      'astro:config:setup': ({ command, config, updateConfig }) => {
        const { base, address } = addressOf(config.site, config.base);
        const settings = settingsOf({ ...options });
        updateConfig({
          // The pages are the tool's, wherever the publication lies.
          srcDir: pathToFileURL(codeFolder()),
          output: 'static',
          trailingSlash: 'always',
          build: { format: 'directory', inlineStylesheets: 'never', assets: 'assets' },
          compressHTML: true,
          // A file of a public folder could take the place of a page without a word.
          publicDir: new URL('./.cache/no-public/', config.root),
          devToolbar: { enabled: false },
          experimental: { incrementalBuild: true },
          // Scripts and styles are files of this host; nothing is inline, nothing comes from elsewhere.
          security: {
            csp: {
              algorithm: 'SHA-256',
              directives: [
                "default-src 'self'",
                "img-src 'self' data:",
                "font-src 'self'",
                "connect-src 'self'",
                "object-src 'none'",
                "base-uri 'none'",
                "form-action 'none'",
              ],
            },
          },
          vite: {
            build: { assetsInlineLimit: 0 },
            plugins: [accentOf(settings.accent)],
            // Not `import.meta.env`: there, a variable of the shell with the same name would take its place.
            define: {
              SITE: JSON.stringify({ ...settings, guide: settings.guide || command === 'dev', base, address }),
            },
          },
        });
      },
      'astro:server:setup': ({ server, logger }) => developing(server, logger),
    },
  };
}
