/**
 * A swap in a process of its own that is killed at one of its operations: `node swap-in-child.ts ROOT N kernel|none`. Before its Nth
 * operation on files or folders, or its Nth call of the kernel, the process kills itself as `kill -9` would. Where it has fewer, it ends
 * with exit code 0.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { NO_KERNEL, openKernel } from '../../src/print/exchange.ts';

const [root = '', last = '', way = ''] = process.argv.slice(2);
let left = Number(last);

function counted<A extends unknown[], R>(operation: (...args: A) => R): (...args: A) => R {
  return (...args) => {
    if (left-- === 0) process.kill(process.pid, 'SIGKILL');
    return operation(...args);
  };
}

const real = way === 'kernel' ? await openKernel() : NO_KERNEL;
const kernel = { exchange: counted(real.exchange), sync: counted(real.sync) };
for (const name of ['renameSync', 'mkdirSync', 'openSync', 'fsyncSync', 'closeSync', 'writeFileSync'] as const)
  Object.assign(fs, { [name]: counted(fs[name] as (...args: unknown[]) => unknown) });
// A folder is removed file by file: a process may end after each.
const remove = counted(fs.rmSync);
Object.assign(fs, {
  rmSync: (path: string, options: fs.RmOptions) => {
    const inside = fs.existsSync(path) ? fs.readdirSync(path, { recursive: true, encoding: 'utf8' }) : [];
    for (const name of inside) if (fs.statSync(`${path}/${name}`).isFile()) remove(`${path}/${name}`, options);
    remove(path, options);
  },
});
syncBuiltinESMExports();
const { swap } = await import('../../src/print/swap.ts');
await swap(root, kernel);
