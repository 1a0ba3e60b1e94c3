/** A plain web server for a printed site: it sends the headers that the site itself asks for in `headers.json`, and nothing else. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { HEADERS_FILE, type HeadersFile, headersOf } from '../compute/outgoing/headers.ts';
import { refuseMalformed } from './malformed.ts';

/** What is sent for an address. */
interface Answer {
  readonly status: number;
  /** The file that is sent, below the folder; none for a redirect. */
  readonly file?: string;
  readonly to?: string;
}

/** A server for a folder, not yet listening. `base` is where the site stands, if not where its `headers.json` says. */
export function staticServer(folder: string, base = hosting(folder).base): Server {
  const server = createServer((request, response) => {
    try {
      return answer(request, response);
    } catch {
      // A name that is too long for the disk, a folder in the place of a file, a file of headers that is being written.
      return end(response, 404, '404: there is nothing at this address.\n');
    }
  });
  const answer = (request: IncomingMessage, response: ServerResponse) => {
    const { method = 'GET', url = '/' } = request;
    if (method !== 'GET' && method !== 'HEAD') return end(response, 405, 'This server only shows files.\n');
    const { status, file, to } = answerFor(folder, base, url);
    if (to !== undefined) return response.writeHead(status, { Location: to }).end();
    if (file === undefined || !existsSync(join(folder, file)))
      return end(response, 404, '404: there is nothing at this address.\n');
    const bytes = readFileSync(join(folder, file));
    response.writeHead(status, { ...headersOf(file, hosting(folder).headers), 'Content-Length': bytes.length });
    return response.end(method === 'HEAD' ? undefined : bytes);
  };
  refuseMalformed(server);
  return server;
}

/** What the site asks of a host. Read anew for each address: a build may have replaced the folder. */
function hosting(folder: string): Pick<HeadersFile, 'base' | 'headers'> {
  const path = join(folder, HEADERS_FILE);
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as HeadersFile) : { base: '/', headers: [] };
}

/** A folder shows its index.html, and is asked for with a slash at its end; what is missing shows 404.html. */
function answerFor(folder: string, base: string, url: string): Answer {
  const [address = '/', query] = url.split(/(?=\?)/, 2);
  if (`${address}/` === base) return { status: 301, to: base };
  if (!address.startsWith(base)) return { status: 404 };
  const path = decodeURIComponent(address.slice(base.length));
  const found = statSync(join(folder, path), { throwIfNoEntry: false });
  if (found?.isFile() && !path.endsWith('/')) return { status: 200, file: path };
  const index = path === '' || path.endsWith('/') ? `${path}index.html` : `${path}/index.html`;
  if (!found?.isDirectory() || !existsSync(join(folder, index))) return { status: 404, file: '404.html' };
  return path === '' || path.endsWith('/') ? { status: 200, file: index } : { status: 301, to: `${address}/${query ?? ''}` };
}

function end(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', Allow: 'GET, HEAD' }).end(text);
}
