/** The model of the home page: notes, newest first, with their highlights. */
import { compareText } from '../../problem.ts';
import type { HomeModel } from '../results.ts';
import { deviceLinks, devicesOf, highlights, isInvented, notePath } from './note.ts';
import type { ComputedNote, Parts } from './parts.ts';

export function homeModel(parts: Parts): HomeModel {
  const notes = parts.notes.filter(({ note }) => note.kind === 'note').toSorted(newestFirst);
  const devices = new Set([...parts.runs.values()].map(({ run }) => run.device));
  return {
    kind: 'home',
    notes: notes.map((computed) => ({
      link: { title: computed.note.title, path: notePath(computed) },
      date: computed.note.date,
      summary: computed.note.summary ?? '',
      device: deviceLinks(parts, computed)
        .map(({ title }) => title)
        .join(', '),
      marks: {
        invented: devicesOf(parts, computed).some((id) => isInvented(parts, id)),
        status: computed.note.status,
      },
      highlights: highlights(parts, computed),
    })),
    devices: [...devices].sort(compareText).map((id) => ({ title: parts.register.devices.get(id)!.title, path: `devices/${id}/` })),
  };
}

function newestFirst(a: ComputedNote, b: ComputedNote): number {
  return compareText(b.note.date, a.note.date) || compareText(a.note.id, b.note.id);
}
