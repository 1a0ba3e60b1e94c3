/** The page about the publication, where its author wrote one. */
import type { PageKind } from '../page-kind.ts';

export const ABOUT: PageKind = {
  folder: null,
  pages: ({ parts }) => (parts.about === null ? [] : [['about/', { kind: 'about', ...parts.about }]]),
};
