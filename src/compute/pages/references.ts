/** How pages of the site are cited. */

import { citation } from '../cite/citation.ts';
import { absolute, type Reference, versionOf } from '../cite/reference.ts';
import { notePath } from '../contents/note-path.ts';
import type { ComputedNote, ComputedRun, SiteContents } from '../contents/site-contents.ts';
import { digest, digestOf } from '../store/digest.ts';
import { jsonText, publishLedger } from '../store/json-text.ts';

/** Of a note or script: its version is the day of its last correction, and its ledger. */
export function noteReference(
  { site, corrections }: Pick<SiteContents, 'site' | 'corrections'>,
  computed: ComputedNote,
): Reference {
  const { note, written } = computed;
  const path = notePath(computed);
  const corrected = (corrections.get(`${note.kind}s/${note.id}`) ?? []).map(({ since }) => since).toSorted();
  return {
    key: `${note.kind}-${note.id}-${note.date.slice(0, 4)}`,
    authors: note.authors ?? [],
    title: note.title,
    publisher: site.title,
    date: note.date,
    url: absolute(site, path),
    version: versionOf(corrected.at(-1), digest(jsonText(publishLedger(written))), 'ledger'),
  };
}

/** The files beside a note that cite it. A script is cited by its note. */
export function citationFiles(parts: SiteContents, computed: ComputedNote): [path: string, text: string][] {
  if (computed.note.kind === 'script') return [];
  return citation(noteReference(parts, computed), notePath(computed)).files;
}

/** Of a run: its version is its log. */
export function runReference(
  { site, register }: Pick<SiteContents, 'site' | 'register'>,
  { run, summary }: ComputedRun,
): Reference {
  const device = register.devices.get(run.device)!;
  return {
    key: `run-${run.id}-${run.date.slice(0, 4)}`,
    authors: [],
    title: `${run.title}: ${device.title}, specimen ${run.specimen}`,
    publisher: site.title,
    date: run.date,
    url: absolute(site, `runs/${run.id}/`),
    version: logsVersion(summary),
  };
}

/** By its log; by the digests of all where it has several, by its figures' date alone where it has none. */
function logsVersion({ logs }: ComputedRun['summary']): string {
  const [first, ...others] = logs;
  if (!first) return 'readings';
  if (others.length === 0) return versionOf(undefined, first.sha256, 'log');
  return versionOf(undefined, digestOf(logs.map(({ sha256 }) => sha256)), 'logs');
}
