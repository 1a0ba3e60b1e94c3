/// <reference types="astro/client" />

/** What astro.config.mjs says of the site; put in place by src/print/integration.ts. */
declare const SITE: import('./compute/project/site-facts.ts').SiteFacts;
