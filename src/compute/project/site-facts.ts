/** What astro.config.mjs says of the site, for what stage 1 writes that names it: citations, archives, structured data. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { error, type Problem } from '../../problem.ts';
import { digest, digestOf } from '../store/digest.ts';
import { memoAsync } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { CONFIG } from './read-project.ts';

/** The publication as its author names it. */
export interface SiteOptions {
  /** The publication's name. */
  readonly title: string;
  /** One line that says what it is. */
  readonly byline: string;
  /** Prints the user's guide as a part of the site; left out, only dev shows it. */
  readonly guide?: boolean;
}

export interface SiteFacts extends SiteOptions {
  readonly guide: boolean;
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

/** The options that an author may write; another is probably a slip, and would be ignored without a word. */
const KNOWN = { title: 0, byline: 0, guide: 0, site: 0, base: 0 } satisfies Record<keyof SiteOptions | 'site' | 'base', 0>;
const OPTIONS: readonly string[] = Object.keys(KNOWN);

const UNNAMED: SiteFacts = { title: '', byline: '', guide: false, base: '/', address: '' };

/** Base and address of a site in the form in which pages and files name them. */
export function addressOf(site: string | undefined, base: string): Pick<SiteFacts, 'base' | 'address'> {
  const folder = encodeURI(base.endsWith('/') ? base : `${base}/`);
  return { base: folder, address: site === undefined ? '' : new URL(folder, site).href };
}

/**
 * Runs the configuration, once for its text: it is a program, and nothing else knows what it says. One that cannot be run leaves the site
 * unnamed here; Astro says what is wrong with it.
 */
export async function siteFacts(root: string, store: Store, config: string): Promise<SiteFacts> {
  if (config === '') return UNNAMED;
  try {
    return await memoAsync(store, digestOf(['site', 2, config]), async () => {
      const { default: configured } = await import(`${pathToFileURL(join(root, CONFIG)).href}?${digest(config)}`);
      return factsOf(configured);
    });
  } catch {
    return UNNAMED;
  }
}

function factsOf({ site, base = '/', integrations = [] }: Configured): SiteFacts {
  const { title = '', byline = '', guide = false } = integrations.find(({ named }) => named)?.named ?? {};
  return { title, byline, guide, ...addressOf(site, base) };
}

/** Options of `publication({ … })` that it does not have, each where it stands in the text of the configuration. */
export function unknownOptions(config: string): Problem[] {
  const [whole, options = ''] = /\bpublication\(\{\n(.*?)^\}\)/ms.exec(config) ?? [];
  if (whole === undefined) return [];
  const before = config.slice(0, config.indexOf(whole)).split('\n').length;
  return options.split('\n').flatMap((line, at) => {
    const [, blanks = '', name = ''] = /^(\s{0,4})(\w+)\s*:/.exec(line) ?? [];
    if (name === '' || OPTIONS.includes(name)) return [];
    const place = { file: CONFIG, line: before + 1 + at, column: blanks.length + 1, endColumn: blanks.length + name.length + 1 };
    return [
      error('unknown-option', place, `a publication has no option \`${name}\``, {
        expected: OPTIONS.join(', '),
        remedy: 'mend its name, or remove the line',
      }),
    ];
  });
}
