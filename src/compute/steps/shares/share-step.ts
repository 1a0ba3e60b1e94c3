/** The drawing of a still → the picture that its page is shown by in feeds, in the store. */
import { pngOfWidth } from '../../../plots/drawing/png.ts';
import { compose } from '../../../plots/stills/compose.ts';
import { SHARE } from '../../../plots/stills/format.ts';
import { LOOKS } from '../../../plots/stills/looks.ts';
import { SHARE_SIZE } from '../../models/share.ts';
import type { Store } from '../../store/store.ts';
import type { ShareResult, ShareTask } from './share-task.ts';

/** Draws one, on light paper. */
export async function shareStep(store: Store, { title, foot, svg }: ShareTask): Promise<ShareResult> {
  const body = new TextDecoder().decode(store.bytes(svg));
  const picture = compose({ title, body, foot }, SHARE, LOOKS[0]!);
  return { png: store.keep(await pngOfWidth(picture, SHARE_SIZE.width)), problems: [] };
}
