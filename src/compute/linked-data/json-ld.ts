/** Structured data of a page as JSON-LD in the vocabulary of schema.org (version 12 and later), and the parts that pages share. */
import type { Licence } from '../../register/register.ts';
import { absolute } from '../cite/reference.ts';
import type { DataFile } from '../models/data-file.ts';
import type { SiteFacts } from '../project/site-facts.ts';

type Json = Readonly<Record<string, unknown>>;

/** The text of a data block in HTML: no sign in it can end the block. */
export function jsonLd(thing: Json): string {
  return JSON.stringify({ '@context': 'https://schema.org', ...thing }).replace(/[<\u2028\u2029]/g, (sign) => {
    return `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
}

/** Who publishes: nobody where the publication has no name. */
export function publisherOf({ title, address }: SiteFacts): Json {
  if (title === '') return {};
  return { publisher: { '@type': 'Organization', name: title, ...(address === '' ? {} : { url: address }) } };
}

/** An address where there is one, else the terms in words. */
export function licenceOf(licence: Licence | undefined): Json {
  return licence === undefined ? {} : { license: licence.url ?? licence.title };
}

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  gz: 'application/gzip',
  json: 'application/json',
  zip: 'application/zip',
};

/** A file to download; nothing where it is offered nowhere. */
export function downloadOf(
  site: SiteFacts,
  file: Pick<DataFile, 'what' | 'name' | 'path' | 'elsewhere' | 'sha256' | 'bytes'>,
): Json[] {
  const { what, name, path, elsewhere, sha256, bytes } = file;
  const contentUrl = path === null ? elsewhere : absolute(site, path);
  if (contentUrl === undefined) return [];
  const encodingFormat = MEDIA_TYPES[/[^.]*$/.exec(name)![0].toLowerCase()];
  return [
    {
      '@type': 'DataDownload',
      name: what,
      contentUrl,
      ...(encodingFormat === undefined ? {} : { encodingFormat }),
      contentSize: `${bytes} B`,
      sha256,
    },
  ];
}
