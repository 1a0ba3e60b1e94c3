/** What astro.config.mjs says of the site, for what stage 1 writes that names it: citations, archives, structured data. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { error, type Place, type Problem } from '../../problem.ts';
import { digest, digestOf } from '../store/digest.ts';
import { memoAsync } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { CONFIG } from './read-project.ts';
import { optionFaults, type SiteSettings, settingsOf } from './site-options.ts';

export interface SiteFacts extends SiteSettings {
  /** The folder that it stands in, with a slash at the end. */
  readonly base: string;
  /** Where readers find it, with that folder and a slash at the end; '' where nobody says so. */
  readonly address: string;
}

/** The part of an Astro configuration that is looked at. */
interface Configured {
  readonly site?: string;
  readonly base?: string;
  readonly integrations?: readonly { readonly named?: Readonly<Record<string, unknown>> }[];
}

interface Read {
  readonly facts: SiteFacts;
  readonly problems: readonly Problem[];
}

const UNNAMED: SiteFacts = { ...settingsOf({}), base: '/', address: '' };

/** Base and address of a site in the form in which pages and files name them. */
export function addressOf(site: string | undefined, base: string): Pick<SiteFacts, 'base' | 'address'> {
  const folder = encodeURI(base.endsWith('/') ? base : `${base}/`);
  return { base: folder, address: site === undefined || !URL.canParse(site) ? '' : new URL(folder, site).href };
}

/** Runs the configuration, once for its text: it is a program, and nothing else knows what it says. One that cannot be run is a problem. */
export async function siteFacts(root: string, store: Store, config: string): Promise<Read> {
  if (config === '') return { facts: UNNAMED, problems: [] };
  try {
    return await memoAsync(store, digestOf(['site', 3, config]), async () => {
      const { default: configured } = await import(`${pathToFileURL(join(root, CONFIG)).href}?${digest(config)}`);
      return read(configured, config);
    });
  } catch (thrown) {
    const told = (thrown instanceof Error ? thrown.message : String(thrown)).replaceAll(root, '.').split('\n')[0];
    const found = `this file cannot be run: ${told}`;
    const remedy = 'mend it; `npm run new -- FOLDER` writes one that works into another folder';
    return { facts: UNNAMED, problems: [error('configuration', { file: CONFIG, line: 1, column: 1 }, found, { remedy })] };
  }
}

function read(configured: Configured | undefined, config: string): Read {
  const { site, base = '/', integrations = [] } = configured ?? {};
  const options: Readonly<Record<string, unknown>> = integrations.find(({ named }) => named)?.named ?? {};
  const faults = Object.keys(options).length > 0 ? optionFaults(options) : [];
  return {
    facts: { ...settingsOf(options), ...addressOf(site, base) },
    problems: faults.map(({ path, rule, found, expected, remedy }) =>
      error(rule, placeOf(config, path), found, { expected, ...(remedy === undefined ? {} : { remedy }) }),
    ),
  };
}

/** Where an option stands in the text of the configuration; its beginning where it is not written out. */
export function placeOf(config: string, path: readonly string[]): Place {
  const text = config.replaceAll(/\/\*.*?\*\/|(?<=^|\s)\/\/[^\n]*/gs, (comment) => comment.replaceAll(/[^\n]/g, ' '));
  let from = Math.max(0, text.search(/\b(?:publication|soakproof)\(/));
  let name = '';
  for (const step of path) {
    const word = step.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&');
    const found = new RegExp(`(?<=[{,\\s])(['"]?)${word}\\1\\s*:`).exec(text.slice(from));
    if (!found) return { file: CONFIG, line: 1, column: 1 };
    [from, name] = [from + found.index, step];
  }
  const before = text.slice(0, from).split('\n');
  const column = before.at(-1)!.length + 1;
  return { file: CONFIG, line: before.length, column, ...(name === '' ? {} : { endColumn: column + name.length }) };
}
