/** Texts beside a script: for its video, and for whoever corrects it later. */
import { scriptSrt } from '../../words/script/srt.ts';
import { notePath } from '../contents/note-path.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import { correctionsOf } from '../pages/corrections.ts';
import { cautionsOf } from '../pages/note.ts';
import { commentText, type VideoTextParts, videoText } from './video-text.ts';

/** The text below the video and its subtitles as SubRip, as names and texts; nothing for a note. */
export function videoFiles(parts: SiteContents, computed: ComputedNote): [name: string, text: string][] {
  const { note, plan } = computed;
  if (note.kind !== 'script' || plan === undefined) return [];
  return [
    ['video.txt', videoText(partsOf(parts, computed, plan))],
    ['script.srt', scriptSrt(plan)],
  ];
}

/** Corrections as a comment to paste, where there are any. */
export function commentFile(parts: SiteContents, computed: ComputedNote): [name: string, text: string][] {
  const { plan } = computed;
  const text = plan === undefined ? '' : commentText(partsOf(parts, computed, plan));
  return text === '' ? [] : [['comment.txt', text]];
}

function partsOf(parts: SiteContents, computed: ComputedNote, plan: NonNullable<ComputedNote['plan']>): VideoTextParts {
  const { note } = computed;
  const speaksFor = parts.notes.find((other) => other.note.kind === 'note' && other.note.id === note.note);
  const { address } = parts.site;
  const pages = [
    ...(speaksFor ? [{ what: 'The write-up', page: speaksFor }] : []),
    { what: 'The script, with the data behind each number', page: computed },
  ];
  return {
    title: note.title,
    summary: note.summary ?? '',
    disclosure: note.disclosure ?? '',
    plan,
    cautions: cautionsOf(parts, computed),
    links: address === '' ? [] : pages.map(({ what, page }) => ({ what, address: `${address}${notePath(page)}` })),
    corrections: correctionsOf(parts, computed).corrections.filter(({ closed }) => closed === undefined),
  };
}
