/** Notes and scripts: their pages, the ledger of each, a script's prompter; citations, corrections, archive and plots beside them. */
import { notePath } from '../../contents/note-path.ts';
import { shareFile } from '../../contents/share-picture.ts';
import type { ComputedNote } from '../../contents/site-contents.ts';
import type { FileBeside } from '../../models/data-file.ts';
import { correctionsText } from '../../pages/corrections.ts';
import { ledgerModel } from '../../pages/ledger.ts';
import { noteModel } from '../../pages/note.ts';
import { pictureFiles } from '../../pages/picture-html.ts';
import { citationFiles } from '../../pages/references.ts';
import { prompterModel, scriptFiles, scriptModel } from '../../pages/script.ts';
import { plotFiles } from '../../steps/plots/plot-files.ts';
import { jsonText, publishLedger } from '../../store/json-text.ts';
import { videoFiles } from '../../video/video-files.ts';
import type { Ground, Page, PageKind } from '../page-kind.ts';

export const NOTES: PageKind = {
  folder: null,
  pages: (ground) => ground.parts.notes.flatMap((computed) => notePages(ground, computed)),
  files: (ground) => ground.parts.notes.flatMap((computed) => noteFiles(ground, computed)),
};

function notePages({ parts, archives }: Ground, computed: ComputedNote): Page[] {
  const path = notePath(computed);
  const ledger: Page = [`${path}ledger/`, ledgerModel(parts, computed)];
  if (computed.note.kind === 'note') return [[path, noteModel(parts, computed, archives.get(path) ?? null)], ledger];
  return [[path, scriptModel(parts, computed)], [`${path}prompter/`, prompterModel(parts, computed)], ledger];
}

function noteFiles({ store, parts, archives }: Ground, computed: ComputedNote): FileBeside[] {
  const path = notePath(computed);
  const archive = archives.get(path);
  const texts: (readonly [file: string, text: string, data?: string])[] = [
    ...citationFiles(parts, computed),
    ...correctionsText(parts, computed),
    [`${path}ledger.json`, jsonText(publishLedger(computed.written)), 'ledger of every number'] as const,
    ...scriptFiles(parts, computed),
    ...videoFiles(parts, computed).map(([name, text]) => [`${path}${name}`, text] as const),
  ];
  return [
    ...texts.map(([file, text, data]) => ({ path: file, blob: store.keep(text), ...(data !== undefined && { data }) })),
    ...plotFiles(path, computed.plots),
    ...shareFile(parts, path),
    ...pictureFiles(computed),
    ...(archive ? [{ path: archive.path, blob: archive.sha256, data: 'archive of its data' }] : []),
  ];
}
