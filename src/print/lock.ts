/**
 * One build at a time in a project folder. The lock is a listening socket of a kind that ends with its process, however
 * that ends: an abstract one on Linux, a pipe on Windows, elsewhere a port of this machine.
 */
import { createHash } from 'node:crypto';
import { realpathSync } from 'node:fs';
import { createServer, type ListenOptions, type Server } from 'node:net';

/** Takes a lock of the project folder; undefined where another process holds it. Close the server to release it. */
export function lock(root: string, name: 'build' | 'dev' = 'build'): Promise<Server | undefined> {
  const server = createServer((socket) => socket.end());
  return new Promise((resolve, reject) => {
    server.once('error', (thrown: NodeJS.ErrnoException) => (thrown.code === 'EADDRINUSE' ? resolve(undefined) : reject(thrown)));
    server.listen(address(`${name} ${realpathSync(root)}`), () => resolve(server.unref()));
  });
}

function address(name: string): ListenOptions {
  const digest = createHash('sha256').update(name).digest();
  const path = `soakproof-${digest.toString('hex', 0, 12)}`;
  if (process.platform === 'linux') return { path: `\0${path}` };
  if (process.platform === 'win32') return { path: `\\\\.\\pipe\\${path}` };
  // Ports from 49152 on are nobody's by registration (RFC 6335, 6).
  return { host: '127.0.0.1', port: 49_152 + (digest.readUInt16BE(0) % 16_384), exclusive: true };
}
