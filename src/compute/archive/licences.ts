/** How what is in an archive may be used, in words. */
import type { Licence } from '../../register/register.ts';
import type { ArchiveScope } from './scope.ts';

const NONE = 'no licence is stated: ask the author before you publish it yourself';

/** "Creative Commons Zero v1.0 Universal (CC0-1.0), https://…". */
function licenceText(licence: Licence | undefined): string {
  if (!licence) return NONE;
  const id = licence.id === undefined ? '' : ` (${licence.id})`;
  return `${licence.title}${id}${licence.url === undefined ? '' : `, ${licence.url}`}`;
}

/** LICENCES.txt: words by note and script, data by licence. */
export function licencesText({ notes, runs, attempts }: ArchiveScope): string {
  const byLicence = new Map<string, string[]>();
  for (const { run } of runs.values()) {
    const text = licenceText(run.licence);
    byLicence.set(text, [...(byLicence.get(text) ?? []), `runs/${run.id}`]);
  }
  if (attempts.size > 0)
    byLicence.set(NONE, [...(byLicence.get(NONE) ?? []), ...[...attempts.keys()].map((id) => `attempts/${id}`)]);
  const words = notes.map(({ note }) => `${note.kind}s/${note.id}: ${licenceText(note.licence)}\n`);
  const data = [...byLicence].map(([text, subjects]) => `${subjects.join(', ')}: ${text}\n`);
  const pictured = notes.some(({ pictures }) => pictures.length > 0) ? 'Words and pictures' : 'Words';
  return `${pictured}\n\n${words.join('')}\nData, with what was computed from it\n\n${data.join('')}`;
}
