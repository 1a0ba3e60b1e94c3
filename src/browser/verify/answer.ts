/** What a file is, by its digest. */
import type { DigestEntry, Digests } from '../../compute/data/known-files.ts';

export interface Answer {
  readonly name: string;
  /** '' where it could not be computed. */
  readonly sha256: string;
  readonly published: readonly DigestEntry[];
  /** Why there is no answer; '' where there is one. */
  readonly fault: string;
}

/** SHA-256 of bytes in hexadecimal (FIPS 180-4, by the browser's own Web Crypto). */
export async function sha256(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Looks a file up. Never rejects: what went wrong is part of the answer. */
export async function answerOf(file: Pick<File, 'name' | 'arrayBuffer'>, load: () => Promise<Digests>): Promise<Answer> {
  const { name } = file;
  let digest = '';
  try {
    digest = await sha256(await file.arrayBuffer());
  } catch {
    const fault = 'The browser could not read this file; it may be too large. Use one of the commands below.';
    return { name, sha256: '', published: [], fault };
  }
  try {
    const { digests } = await load();
    return { name, sha256: digest, published: Object.hasOwn(digests, digest) ? digests[digest]! : [], fault: '' };
  } catch {
    return { name, sha256: digest, published: [], fault: 'The list of digests could not be loaded. Look for this one below.' };
  }
}
