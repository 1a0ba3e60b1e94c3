/** Asks a running host for a few addresses of the site, and tells what it does otherwise than `headers.json` says. */
import { HEADERS_FILE, type HeadersFile, headersOf } from '../../compute/outgoing/headers.ts';
import { type SiteFile, textOf } from '../../compute/outgoing/site-files.ts';
import { error, type Problem, warning } from '../../problem.ts';

/** An address that no site has. */
const NOWHERE = 'no-such-page-anywhere/';

/** Whether a text is the whole address of a folder on a host. */
export function isAddress(text: string): boolean {
  return /^https?:\/\/[^\s?#]+$/.test(text) && URL.canParse(text);
}

/** What a host answered. */
export interface Answer {
  readonly status: number;
  readonly headers: { get(name: string): string | null };
  readonly bytes: Uint8Array;
}

/** Asks for an address, following redirects. */
export type Ask = (address: string) => Promise<Answer>;

/** Asks over the network. */
const ask: Ask = async (address) => {
  const response = await fetch(address);
  return { status: response.status, headers: response.headers, bytes: new Uint8Array(await response.arrayBuffer()) };
};

/** One file of each ending, a page in a folder among them, and the first of `assets/`: enough to see how a host treats all of them. */
function samples(files: readonly SiteFile[]): SiteFile[] {
  const kinds = Map.groupBy(files, ({ path }) => `${path.startsWith('assets/')} ${path.slice(path.lastIndexOf('.'))}`);
  const inFolder = files.find(({ path }) => path.endsWith('/index.html'));
  return [
    ...new Set([
      ...files.filter(({ path }) => path === 'index.html'),
      ...(inFolder ? [inFolder] : []),
      ...[...kinds.values()].map(([first]) => first!),
    ]),
  ];
}

/** What the host at `address`, which ends in a slash, does otherwise. Throws where nobody answers. */
export async function hostFaults(files: readonly SiteFile[], address: string, asking: Ask = ask): Promise<Problem[]> {
  const hosting = files.find(({ path }) => path === HEADERS_FILE);
  const { headers: rules } = JSON.parse(hosting === undefined ? '{"headers":[]}' : textOf(hosting)) as HeadersFile;
  const problems: Problem[] = [];
  const missing = new Map<string, { readonly path: string; readonly found: string | null; readonly wanted: string }[]>();
  for (const file of samples(files)) {
    const to = address + addressed(file.path.replace(/(?:^|(?<=\/))index\.html$/, ''));
    const answer = await asking(to);
    const fault = fileFault(file, to, answer);
    if (fault !== undefined) {
      problems.push(fault);
      continue;
    }
    for (const [name, wanted] of Object.entries(headersOf(file.path, rules))) {
      const found = answer.headers.get(name);
      if (sameHeader(name, found, wanted)) continue;
      const key = `${name}: ${wanted}`;
      missing.set(key, [...(missing.get(key) ?? []), { path: file.path, found, wanted }]);
    }
  }
  const nowhere = await asking(address + NOWHERE);
  if (nowhere.status !== 404)
    problems.push(
      at(
        '404.html',
        warning,
        'host-missing',
        `the host answers ${nowhere.status} at an address that the site does not have`,
        '404',
        'let it show 404.html there, with the status 404',
      ),
    );
  return [...problems, ...[...missing].map(([header, cases]) => headerFault(header, cases))];
}

/** A path as an address writes it: a file may have any sign in its name. */
function addressed(path: string): string {
  return path.split('/').map(encodeURIComponent).join('/');
}

function fileFault({ path, bytes }: SiteFile, to: string, { status, bytes: got }: Answer): Problem | undefined {
  const folder = path.endsWith('/index.html');
  if (status === 200 && Buffer.from(got).equals(bytes)) return undefined;
  if (folder)
    return at(
      path,
      error,
      'host-folder',
      `the host shows something else at ${to} (status ${status})`,
      'the index.html of the folder',
      'tell the host that `index.html` is the page of every folder, or take one that does so: nearly every link of the site leads to a folder',
    );
  const found = status === 200 ? `other bytes are at ${to}` : `the host answers ${status} at ${to}`;
  return at(
    path,
    error,
    'host-file',
    found,
    'the file as it is in dist/',
    'put all of dist/ on the host, and let it change nothing in the files',
  );
}

function headerFault(header: string, cases: readonly { readonly path: string; readonly found: string | null }[]): Problem {
  const [{ path, found }] = cases as [{ path: string; found: string | null }];
  const [name] = header.split(':');
  const others = cases.length === 1 ? '' : `, nor with ${cases.length - 1} more of the files that were asked for`;
  const sent = found === null ? `the host sends no ${name} with ${path}` : `the host sends ${name}: ${found} with ${path}`;
  return at(
    path,
    warning,
    'host-header',
    `${sent}${found === null ? others : ''}`,
    header,
    'add it to what the host sends: the guide has how, under “Hosting”',
  );
}

/** Of types and directives case and blanks do not count; a policy may be one of several. */
function sameHeader(name: string, found: string | null, wanted: string): boolean {
  const form = (text: string) =>
    text
      .toLowerCase()
      .replaceAll(/\s*([;,])\s*/g, '$1')
      .trim();
  if (found === null) return false;
  return name === 'Content-Security-Policy' ? form(found).includes(form(wanted)) : form(found) === form(wanted);
}

function at(path: string, weight: typeof error, rule: string, found: string, expected: string, remedy: string): Problem {
  return weight(rule, { file: `dist/${path}`, line: 1, column: 1 }, found, { expected, remedy });
}
