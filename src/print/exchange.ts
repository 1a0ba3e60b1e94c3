/**
 * What the kernel does with folders and Node has no door to: exchange two of them in one step, and write out all that a disk still holds
 * back. Linux: renameat2(2) with RENAME_EXCHANGE, syncfs(2). macOS: renamex_np(2) with RENAME_SWAP, sync(2). Elsewhere, on a disk
 * that cannot do it (network folders, for one), or where the package cannot be loaded, the answer is no.
 */
import { closeSync, openSync } from 'node:fs';

export interface Kernel {
  /** Exchanges two paths of one disk; false where that cannot be done, and nothing has changed then. */
  exchange(a: string, b: string): boolean;
  /** Writes out what the disk of a folder holds back; false where that cannot be told. */
  sync(folder: string): boolean;
}

export const NO_KERNEL: Kernel = { exchange: () => false, sync: () => false };

/** Stands for the working folder of the process, for paths that are absolute. */
const AT_WORKING_FOLDER = -100;
const LINUX_EXCHANGE = 2;
const MACOS_SWAP = 2;

/** The door to the kernel of this machine. */
export async function openKernel(platform: NodeJS.Platform = process.platform): Promise<Kernel> {
  try {
    if (platform === 'linux') return await linux();
    if (platform === 'darwin') return await macos();
    return NO_KERNEL;
  } catch {
    // No build of the package for this machine, or a C library without these functions.
    return NO_KERNEL;
  }
}

async function linux(): Promise<Kernel> {
  const { default: koffi } = await import('koffi');
  const c = koffi.load(null);
  const rename = c.func('int renameat2(int, const char *, int, const char *, unsigned int)');
  const sync = c.func('int syncfs(int)');
  return {
    exchange: (a, b) => rename(AT_WORKING_FOLDER, a, AT_WORKING_FOLDER, b, LINUX_EXCHANGE) === 0,
    sync: (folder) => withDescriptor(folder, (descriptor) => sync(descriptor) === 0),
  };
}

async function macos(): Promise<Kernel> {
  const { default: koffi } = await import('koffi');
  const c = koffi.load('/usr/lib/libSystem.dylib');
  const rename = c.func('int renamex_np(const char *, const char *, unsigned int)');
  const sync = c.func('void sync()');
  return {
    exchange: (a, b) => rename(a, b, MACOS_SWAP) === 0,
    sync: () => {
      sync();
      return true;
    },
  };
}

function withDescriptor(folder: string, use: (descriptor: number) => boolean): boolean {
  const descriptor = openSync(folder, 'r');
  try {
    return use(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
