/** A run's page as a Dataset. */
import { nameInWords } from '../../words/expression/in-words.ts';
import { absolute } from '../cite/reference.ts';
import type { ComputedRun, SiteContents } from '../contents/site-contents.ts';
import { aboutRun } from '../data/description.ts';
import { downloadOf, jsonLd, licenceOf, publisherOf } from './json-ld.ts';

/** Its files with their digests, what was measured in which unit, and since when it is out. No creator: a run names none. */
export function linkedRun(parts: SiteContents, { run, summary }: ComputedRun): string {
  const { site, register, data } = parts;
  const device = register.devices.get(run.device)!;
  const url = absolute(site, `runs/${run.id}/`);
  const notes = parts.notes.filter(({ note, reaches }) => note.status === 'published' && reaches.includes(run.id));
  const published = notes.map(({ note }) => note.date).toSorted();
  const techniques = run.instruments.map((id) => register.instruments.get(id)!.title);
  const identifiers = summary.logs.map(({ name, sha256 }) => ({
    '@type': 'PropertyValue',
    propertyID: name === '' ? 'SHA-256 of the log' : `SHA-256 of the log ${name}`,
    value: sha256,
  }));
  return jsonLd({
    '@type': 'Dataset',
    '@id': url,
    url,
    ...(identifiers.length === 0 ? {} : { identifier: identifiers.length === 1 ? identifiers[0] : identifiers }),
    name: run.title,
    description: aboutRun(run, device),
    ...(device.invented ? { keywords: ['invented data'] } : {}),
    dateCreated: run.date,
    ...(published[0] === undefined ? {} : { datePublished: published[0] }),
    temporalCoverage: run.date,
    ...licenceOf(run.licence),
    ...publisherOf(site),
    ...(techniques.length === 0 ? {} : { measurementTechnique: techniques }),
    variableMeasured: summary.channels.map(({ name, quantity, unit }) => ({
      '@type': 'PropertyValue',
      name: nameInWords(name),
      description: quantity.replaceAll('_', ' '),
      unitText: unit,
    })),
    distribution: (data.get(`runs/${run.id}`) ?? []).flatMap((file) => downloadOf(site, file)),
  });
}
