/** A note's page as a Report that is based on Datasets. */

import { absolute, type Name, nameOf } from '../cite/reference.ts';
import { devicesOf, notePath } from '../contents/note-path.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import type { Archive } from '../models/note.ts';
import { downloadOf, jsonLd, licenceOf, publisherOf } from './json-ld.ts';

/** Its authors where it names them, its runs, its devices, the archive. */
export function linkedNote(parts: SiteContents, computed: ComputedNote, archive: Archive | null): string {
  const { site, register } = parts;
  const { note, reaches } = computed;
  const url = absolute(site, notePath(computed));
  const corrected = (parts.corrections.get(`notes/${note.id}`) ?? []).map(({ since }) => since).toSorted();
  const bases = reaches.map((id) => ({ path: `runs/${id}/`, title: parts.runs.get(id)!.run.title }));
  return jsonLd({
    '@type': 'Report',
    '@id': url,
    url,
    name: note.title,
    headline: note.title,
    ...(note.summary === undefined ? {} : { description: note.summary }),
    datePublished: note.date,
    ...(corrected.length === 0 ? {} : { dateModified: corrected.at(-1) }),
    ...(note.authors === undefined ? {} : { author: note.authors.map((author) => personOf(nameOf(author))) }),
    ...publisherOf(site),
    ...licenceOf(note.licence),
    about: devicesOf(parts, computed).map((id) => ({
      '@type': 'Product',
      name: register.devices.get(id)!.title,
      url: absolute(site, `devices/${id}/`),
    })),
    isBasedOn: bases.map(({ path, title }) => {
      const dataset = absolute(site, path);
      return { '@type': 'Dataset', '@id': dataset, name: title, url: dataset };
    }),
    ...(archive === null ? {} : { encoding: downloadOf(site, { ...archive, what: 'all of its data', name: archive.path }) }),
  });
}

function personOf(name: Name): object {
  if ('literal' in name) return { '@type': 'Person', name: name.literal };
  const { family, given } = name;
  return { '@type': 'Person', name: `${given} ${family}`, familyName: family, givenName: given };
}
