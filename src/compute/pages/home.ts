/** The model of the home page: notes, newest first, with their highlights. */

import { compareText } from '../../problem.ts';
import { printQuantity } from '../../quantities/print.ts';
import { NO_MAKER } from '../../register/files/devices.ts';
import { clockTime } from '../../words/script/timeline.ts';
import { newestFirst } from '../contents/note-order.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import type { HomeModel, Link } from '../results.ts';
import { deviceLinks, highlights, leadPlot, marksOf, notePath, scriptsFor } from './note.ts';

export function homeModel(parts: SiteContents): HomeModel {
  const notes = parts.notes.filter(({ note }) => note.kind === 'note').toSorted(newestFirst);
  const spokenFor = new Set(notes.map(({ note }) => note.id));
  const loose = parts.notes.filter(({ note }) => note.kind === 'script' && !spokenFor.has(note.note ?? ''));
  const tried = [...parts.attempts.values()].map(({ attempts }) => attempts.device);
  const devices = new Set([...[...parts.runs.values()].map(({ run }) => run.device), ...tried]);
  return {
    kind: 'home',
    notes: notes.map((computed) => ({
      link: linkOf(computed),
      date: computed.note.date,
      summary: computed.note.summary ?? '',
      device: deviceLinks(parts, computed)
        .map(({ title }) => title)
        .join(', '),
      marks: marksOf(parts, computed),
      highlights: highlights(parts, computed),
      lead: leadPlot(computed),
      authors: computed.note.authors ?? [],
      scripts: scriptsFor(parts, computed).map((script) => ({ link: linkOf(script), length: lengthOf(script) })),
    })),
    devices: [...devices].sort(compareText).map((id) => deviceOf(parts, id)),
    scripts: loose.toSorted(newestFirst).map((script) => ({
      link: linkOf(script),
      date: script.note.date,
      length: lengthOf(script),
      marks: marksOf(parts, script),
    })),
  };
}

function deviceOf({ register }: SiteContents, id: string): HomeModel['devices'][number] {
  const { title, maker, ratedClock } = register.devices.get(id)!;
  const rated = ratedClock ? [`rated ${printQuantity(ratedClock).text}`] : [];
  return { title, path: `devices/${id}/`, about: [maker, ...rated].filter((text) => text !== '' && text !== NO_MAKER).join(', ') };
}

function linkOf(computed: ComputedNote): Link {
  return { title: computed.note.title, path: notePath(computed) };
}

function lengthOf({ plan }: ComputedNote): string {
  return clockTime(plan?.seconds ?? 0);
}
