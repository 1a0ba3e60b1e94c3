/** What a worker is asked to draw, and the key that covers it. */
import type { Pictures } from '../../../plots/draw.ts';
import type { AttemptsSubject, ComparedSubject, Drawn } from '../../../plots/drawing/drawn.ts';
import type { PlotRequest } from '../../../register/requests.ts';
import type { StillResult } from '../../models/stills.ts';
import { digestOf } from '../../store/digest.ts';
import type { RunTask } from '../runs/run-step.ts';

export interface PlotTask {
  readonly step: 'plot';
  readonly key: string;
  readonly request: PlotRequest;
  /** Its runs, in the request's order. */
  readonly subjects: readonly PlotSubjectTask[];
  readonly attempts: readonly AttemptsSubject[];
  /** The comparison whose figures are drawn. */
  readonly compared: ComparedSubject | null;
  readonly pictures: Pictures;
}

/** A comparison to draw, with the key of its figures. */
export interface ComparedTask {
  readonly key: string;
  readonly subject: ComparedSubject;
}

export interface PlotSubjectTask {
  readonly title: string;
  readonly run: RunTask;
}

/** A Drawn whose drawings and downloads are in the store: what is looked up for every build stays small. */
export interface PlotResult extends Omit<Drawn, 'wide' | 'narrow' | 'svg' | 'png' | 'csv' | 'stills'> {
  readonly inline: { readonly wide: string; readonly narrow: string };
  /** Blobs; a picture only of plots that are meant to be shown elsewhere. */
  readonly files: { readonly svg: string; readonly png?: string; readonly csv: string };
  /** Where pictures are made of it: one for each that it takes. */
  readonly stills: readonly StillResult[];
}

/** A task with the key that covers it: its code, what was asked for, and the results it is drawn from. */
export function plotTask(
  code: string,
  request: PlotRequest,
  subjects: readonly PlotSubjectTask[],
  attempts: readonly AttemptsSubject[] = [],
  compared: ComparedTask | null = null,
  pictures: Pictures = {},
): PlotTask {
  const { place: _place, ...asked } = request;
  const beside = compared ? [[compared.key, compared.subject.reference, compared.subject.runs]] : [];
  const key = digestOf(['plot', code, asked, pictures, subjects.map(({ title, run }) => [title, run.key]), attempts, ...beside]);
  return { step: 'plot', key, request, subjects, attempts, compared: compared?.subject ?? null, pictures };
}
