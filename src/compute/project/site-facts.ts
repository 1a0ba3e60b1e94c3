/** What astro.config.mjs says of the site, for what stage 1 writes that names it: citations, archives, structured data. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { digest, digestOf } from '../store/digest.ts';
import type { Store } from '../store/store.ts';
import { CONFIG } from './read-project.ts';

/** The publication as its author names it. */
export interface SiteOptions {
  /** The publication's name. */
  readonly title: string;
  /** One line that says what it is. */
  readonly byline: string;
}

export interface SiteFacts extends SiteOptions {
  /** The folder that it stands in, with a slash at the end. */
  readonly base: string;
  /** Where readers find it, with that folder and a slash at the end; '' where nobody says so. */
  readonly address: string;
}

/** The part of an Astro configuration that is looked at. */
interface Configured {
  readonly site?: string;
  readonly base?: string;
  readonly integrations?: readonly { readonly named?: SiteOptions }[];
}

const UNNAMED: SiteFacts = { title: '', byline: '', base: '/', address: '' };

/** Base and address of a site in the form in which pages and files name them. */
export function addressOf(site: string | undefined, base: string): Pick<SiteFacts, 'base' | 'address'> {
  const folder = encodeURI(base.endsWith('/') ? base : `${base}/`);
  return { base: folder, address: site === undefined ? '' : new URL(folder, site).href };
}

export interface ReadFacts {
  readonly facts: SiteFacts;
  /** Under which they are stored; none where they could not be read. */
  readonly keys: readonly string[];
}

/**
 * Runs the configuration, once for its text: it is a program, and nothing else knows what it says. One that cannot be run leaves the site
 * unnamed here; Astro says what is wrong with it.
 */
export async function siteFacts(root: string, store: Store, config: string): Promise<ReadFacts> {
  if (config === '') return { facts: UNNAMED, keys: [] };
  const key = digestOf(['site', 1, config]);
  const stored = store.get(key) as SiteFacts | undefined;
  if (stored !== undefined) return { facts: stored, keys: [key] };
  try {
    const { default: configured } = await import(`${pathToFileURL(join(root, CONFIG)).href}?${digest(config)}`);
    const facts = factsOf(configured);
    store.set(key, facts);
    return { facts, keys: [key] };
  } catch {
    return { facts: UNNAMED, keys: [] };
  }
}

function factsOf({ site, base = '/', integrations = [] }: Configured): SiteFacts {
  const { title = '', byline = '' } = integrations.find(({ named }) => named)?.named ?? {};
  return { title, byline, ...addressOf(site, base) };
}
