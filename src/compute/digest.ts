/** SHA-256 digests: of bytes, of text, and of any plain value through its serialised form. */
import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';

/** SHA-256 of bytes or UTF-8 text, in hexadecimal. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** Digest of a plain value (maps, typed arrays and infinities included). Equal values built in the same order give equal digests. */
export function digestOf(value: unknown): string {
  return digest(serialize(value));
}
