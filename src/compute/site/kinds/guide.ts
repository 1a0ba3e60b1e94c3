/** The user's guide, where the site has one: its author says so, and in dev it is always at hand. */
import { guideModels } from '../../pages/guide.ts';
import { guideTexts } from '../../project/guide-texts.ts';
import type { PageKind } from '../page-kind.ts';

export const GUIDE: PageKind = {
  folder: null,
  pages: ({ parts, scope }) => (parts.site.guide || scope === 'all' ? guideModels(guideTexts()) : []),
};
