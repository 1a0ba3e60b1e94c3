/** A citation as CSL-JSON (Citation Style Language 1.0.2, "CSL-JSON": an array of items). */
import { namesOf, type Reference } from './reference.ts';

/** The form is its standard's, so that it does not begin with a format of ours. */
export function cslJson(reference: Reference): readonly object[] {
  const { key, title, publisher, date, url, version } = reference;
  const author = namesOf(reference);
  return [
    {
      id: key,
      type: 'report',
      title,
      ...(author.length === 0 ? {} : { author }),
      ...(publisher === '' ? {} : { publisher }),
      issued: { 'date-parts': [date.split('-').map(Number)] },
      URL: url,
      version,
    },
  ];
}
