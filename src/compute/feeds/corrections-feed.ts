/** The feed of corrections: Atom (RFC 4287), with the dates that the author gave. */

import type { FeedModel } from '../results.ts';
import { atomFeed, type FeedSite, midnight, urn } from './atom.ts';
import { escaped } from './escaped.ts';

/** The feed as XML: one entry a correction, newest first. Its own date is that of its newest entry, or of the newest publication. */
export function correctionsFeed({ entries, updated }: FeedModel, site: FeedSite): string {
  const head = {
    kind: [],
    title: `${site.title}: corrections`,
    description: 'Published numbers that are no longer so: what they were, what they are, why, and since when',
    updated,
  };
  const items = entries.map(({ title, path, since, was, is, reason, sentence, cue, number, label }) => {
    const where = cue === undefined ? '' : ` (at ${cue})`;
    return {
      // Of what it says, not of where it stands in the page.
      id: urn([path.replace(/#.*$/, ''), since, number, was, is, cue ?? '', sentence]),
      title: escaped(`${title}${where}: ${was} is now ${is}`),
      path,
      date: midnight(since),
      description: escaped(
        [
          sentence === '' ? '' : `It said: ${sentence}`,
          `${label === '' ? 'Was' : `${sentenceCase(label)}: was`} ${was}, is ${is}, since ${since}.`,
          reason,
        ]
          .filter((part) => part !== '')
          .join('\n'),
      ),
    };
  });
  return atomFeed(site, head, items);
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
