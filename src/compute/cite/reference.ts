/** What a citation of a page says, whatever its form. */
import type { SiteFacts } from '../project/site-facts.ts';

export interface Reference {
  /** Unique in the site, and what keys of BibTeX may hold: letters, digits, hyphens. */
  readonly key: string;
  /** As their author wrote them: "Rowan Alder", or "Alder, Rowan" with the family name first. Empty where nobody is named. */
  readonly authors: readonly string[];
  readonly title: string;
  /** The publication; '' where it has no name. */
  readonly publisher: string;
  /** ISO date. */
  readonly date: string;
  /** Whole where the site knows its own, else below the base. */
  readonly url: string;
  /** In words: "corrected 2026-05-02; ledger SHA-256 0123456789ab". */
  readonly version: string;
}

/** A person or body, its name apart only where its author set it apart: how a name divides is not guessed. */
export type Name = { readonly family: string; readonly given: string } | { readonly literal: string };

/** One comma parts the family name from the rest: "Alder, Rowan". */
export function nameOf(author: string): Name {
  const [family = '', given = '', ...more] = author.split(',').map((part) => part.trim());
  // BibTeX takes the word for the end of a name, but for one in braces.
  const joined = /\sand\s/i.test(author);
  return family === '' || given === '' || more.length > 0 || joined ? { literal: author } : { family, given };
}

/** Who a citation begins with: authors, else the publication itself, which stands for them. */
export function namesOf({ authors, publisher }: Reference): Name[] {
  if (authors.length > 0) return authors.map(nameOf);
  return publisher === '' ? [] : [{ literal: publisher }];
}

/** The address of a page or file, as far as the site knows its own. */
export function absolute({ address, base }: SiteFacts, path: string): string {
  return (address || base) + encodeURI(path);
}

/** Digits of a digest that a citation carries: 48 bits. */
const DIGITS = 12;

/** Which state of a page is cited: its ledger changes with any number that prints differently. */
export function versionOf(corrected: string | undefined, digest: string, what: string): string {
  const shown = `${what} SHA-256 ${digest.slice(0, DIGITS)}`;
  return corrected === undefined ? shown : `corrected ${corrected}; ${shown}`;
}
