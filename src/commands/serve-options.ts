/** `--port` and `--host` of the commands that serve. */
import { parseArgs } from 'node:util';
import type { ServeOptions } from '../print/serve.ts';

/** What both of them say of the options in their help. */
export const SERVE_OPTIONS = {
  '--port': { value: 'NUMBER', does: 'the port to listen on, 0 for any that is free' },
  '--host': { value: 'NAME', does: 'the name or address to listen on; without it this machine alone can connect' },
} as const;

/** Reads the command line; stops with a sentence where it does not parse. */
export function serveOptions(): ServeOptions {
  try {
    const { values } = parseArgs({ options: { port: { type: 'string' }, host: { type: 'string' } } });
    const port = values.port === undefined ? undefined : /^\d+$/.test(values.port) ? Number(values.port) : Number.NaN;
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port < 65_536))
      throw new Error(`--port is ${values.port}, expected 0 to 65535`);
    return { ...(port !== undefined && { port }), ...(values.host !== undefined && { host: values.host }) };
  } catch (thrown) {
    console.error(`${thrown instanceof Error ? thrown.message : String(thrown)}. The options are --port NUMBER and --host NAME.`);
    process.exit(2);
  }
}
