/** The archives of all published notes, one after the other: no two are in memory at once. */
import type { ArchiveOrigin } from '../../register/sealed/archive-origins.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { notePath } from '../contents/note-path.ts';
import type { SiteContents } from '../contents/site-contents.ts';
import type { Archive } from '../models/note.ts';
import type { Project } from '../project/read-project.ts';
import { toolVersion } from '../store/places.ts';
import type { Store } from '../store/store.ts';
import { archiveOf } from './make-archive.ts';

/** By the path of the note's page. */
export type Archives = ReadonlyMap<string, Archive>;

/** What archives are made of besides the contents of the site. */
export interface ArchiveInputs {
  readonly project: Project;
  readonly states: ReadonlyMap<string, PublishedState>;
  readonly origins: readonly ArchiveOrigin[];
  /** Digest of all code of stage 1. */
  readonly code: string;
}

export function archivesOf(store: Store, parts: SiteContents, { project, states, code }: ArchiveInputs): Archives {
  const maker = { version: toolVersion(), code, node: process.versions.node.split('.')[0]! };
  const texts = new Map(project.content.map(({ path, text }) => [path, text]));
  const notes = parts.notes.filter(({ note }) => note.kind === 'note' && note.status === 'published');
  const sources = { store, parts, texts, copies: project.copies, states, maker };
  return new Map(notes.map((note) => [notePath(note), archiveOf(sources, note)]));
}
