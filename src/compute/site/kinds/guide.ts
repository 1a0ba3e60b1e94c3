/** The user's guide, where the site has one: its author says so, and in dev it is always at hand. */
import { guideModels } from '../../pages/guide.ts';
import { guideTexts } from '../../project/guide-texts.ts';
import type { PageKind } from '../page-kind.ts';

export const GUIDE: PageKind = {
  folder: null,
  pages: ({ parts, scope }) => {
    if (!parts.site.guide && scope !== 'all') return [];
    const texts = guideTexts();
    return parts.memo.of('guide', texts, () => guideModels(texts));
  },
};
