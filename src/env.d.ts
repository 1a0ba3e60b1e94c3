/// <reference types="astro/client" />

/** What astro.config.mjs says of the site; put in place by src/print/integration.ts. */
declare const SITE: {
  /** The publication's name. */
  readonly title: string;
  /** One line that says what it is. */
  readonly byline: string;
  /** Whether the site has the user's guide. */
  readonly guide: boolean;
  /** The folder that it stands in, with a slash at the end. */
  readonly base: string;
  /** Where readers find it, with that folder and a slash at the end; '' where the author has not said it. */
  readonly address: string;
};
