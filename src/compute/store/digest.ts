/** SHA-256 digests: of bytes, of text, and of any plain value through one canonical text. */
import { createHash } from 'node:crypto';

/** SHA-256 of bytes or UTF-8 text, in hexadecimal. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/**
 * Digest of a plain value: objects, arrays, maps, text, numbers (infinities, NaN and −0 told apart). Equal values give
 * equal digests, however they were made; functions and undefined fields count as absent, as in JSON.
 */
export function digestOf(value: unknown): string {
  return digest(JSON.stringify(value, canonical));
}

/** JSON has no maps and fewer numbers than we do: both are tagged. Keys are sorted, entries of maps keep their order. */
function canonical(_key: string, value: unknown): unknown {
  if (typeof value === 'number')
    return Number.isFinite(value) && !Object.is(value, -0) ? value : { $number: String(value), $minus: Object.is(value, -0) };
  if (value instanceof Map) return { $map: [...value] };
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
