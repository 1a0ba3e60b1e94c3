/** Seals: canonical JSON (RFC 8785) and its digest, by which an edit of a file that a command wrote is found. */
import canonicalize from 'canonicalize';
import { digest } from './digest.ts';

/** SHA-256 of a value's canonical JSON. Throws where it holds what JSON cannot: numbers that are not finite, halves of a character. */
export function sealOf(value: object): string {
  return digest(canonicalize(value)!);
}

/** The text of a file that holds a value: canonical JSON and a final newline. Throws as `sealOf` does. */
export function canonicalText(value: object): string {
  return `${canonicalize(value)}\n`;
}
