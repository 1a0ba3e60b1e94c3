/** Serves a folder on this machine as `npm run preview` does, under a base path, on any free port. */
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { staticServer } from '../../src/print/static-server.ts';

export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

export async function serve(folder: string, base = '/'): Promise<Served> {
  const server = staticServer(folder, base);
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${base}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
