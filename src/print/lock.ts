/** One build at a time in a project folder. The lock is a listening socket: it ends with its process, however that ends. */
import { createHash } from 'node:crypto';
import { rmSync } from 'node:fs';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Takes the lock; undefined where another process holds it. Close the server to release it. */
export async function lock(root: string): Promise<Server | undefined> {
  const path = socketPath(root);
  const taken = await listen(path);
  if (taken !== undefined) return taken;
  if (await answers(path)) return undefined;
  rmSync(path, { force: true });
  return listen(path);
}

function socketPath(root: string): string {
  const name = `soakproof-${createHash('sha256').update(root).digest('hex').slice(0, 16)}`;
  return process.platform === 'win32' ? `\\\\.\\pipe\\${name}` : join(tmpdir(), `${name}.sock`);
}

function listen(path: string): Promise<Server | undefined> {
  const server = createServer((socket) => socket.end());
  return new Promise((resolve) => {
    server.once('error', () => resolve(undefined));
    server.listen(path, () => resolve(server.unref()));
  });
}

function answers(path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(path);
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}
