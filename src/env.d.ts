/// <reference types="astro/client" />

interface ImportMetaEnv {
  /** The site's name, from astro.config.mjs. */
  readonly SITE_TITLE: string;
  /** One line below it. */
  readonly SITE_BYLINE: string;
}

interface ImportMeta {
  readonly env: ImportMetaEnv;
}
