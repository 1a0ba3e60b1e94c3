/** Addresses that no page can have: answered before the server that we build on stumbles on them. */
import type { EventEmitter } from 'node:events';
import type { IncomingMessage, ServerResponse } from 'node:http';

/** Longer than any address of ours, and shorter than what a server takes for a header. */
const LONGEST = 4096;

/**
 * Whether a request target is malformed: escapes that are no UTF-8 (RFC 3986, 2.1 and 2.5), control characters, backslashes, steps `.` and
 * `..` also where they are escaped, or an address beyond any length.
 */
export function isMalformed(target: string): boolean {
  if (!target.startsWith('/') || target.length > LONGEST) return true;
  const whole = decoded(target);
  if (whole === undefined) return true;
  const path = decoded(target.split(/[?#]/, 1)[0]!) as string;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  return /[\u0000-\u001F\u007F\\]/.test(path) || path.split('/').some((step) => step === '.' || step === '..');
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text);
  } catch {
    return undefined;
  }
}

/** Answers malformed addresses with 400, before anything else of the server sees them. */
export function refuseMalformed(server: EventEmitter): void {
  const listeners = server.listeners('request') as ((request: IncomingMessage, response: ServerResponse) => void)[];
  server.removeAllListeners('request');
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    if (isMalformed(request.url ?? '')) {
      response.writeHead(400, { 'Content-Type': 'text/plain; charset=utf-8' });
      response.end('400: this address is malformed.\n');
    } else for (const listener of listeners) listener(request, response);
  });
}
