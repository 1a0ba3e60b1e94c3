/** How to cite a page: in a line of text, and as two files beside it. */

import type { Citation } from '../models/shared.ts';
import { jsonText } from '../store/json-text.ts';
import { bibtex } from './bibtex.ts';
import { cslJson } from './csl.ts';
import { plainCitation } from './plain.ts';
import type { Reference } from './reference.ts';

/** The citation of the page at `path`, and the files beside it. */
export function citation(reference: Reference, path: string): { shown: Citation; files: [path: string, text: string][] } {
  const [bib, json] = [`${path}cite.bib`, `${path}cite.json`];
  return {
    shown: { plain: plainCitation(reference), bib, json },
    files: [
      [bib, bibtex(reference)],
      [json, jsonText(cslJson(reference))],
    ],
  };
}
