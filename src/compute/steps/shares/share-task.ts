/** The picture that a page is shown by where somebody links to it: what a worker is asked to draw, and the key that covers it. */
import type { Foot } from '../../../plots/stills/compose.ts';
import type { Problem } from '../../../problem.ts';
import { digestOf } from '../../store/digest.ts';

export interface ShareTask {
  readonly step: 'share';
  readonly key: string;
  readonly title: string;
  readonly foot: Foot;
  /** Blob of the drawing of a still. */
  readonly svg: string;
}

export interface ShareResult {
  /** Blob of the PNG. */
  readonly png: string;
  readonly problems: readonly Problem[];
}

/** A task with the key that covers it. */
export function shareTask(code: string, asked: Pick<ShareTask, 'title' | 'foot' | 'svg'>): ShareTask {
  return { step: 'share', key: digestOf(['share', code, asked]), ...asked };
}
