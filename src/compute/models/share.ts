/** The picture by which a page is shown where somebody links to it. */

/** Its size, px: what readers of Open Graph (ogp.me) commonly ask for; common practice, no source. */
export const SHARE_SIZE = { width: 1200, height: 630 } as const;

export interface SharePicture {
  /** Path below the base. */
  readonly path: string;
  readonly width: number;
  readonly height: number;
  /** What is to be seen. */
  readonly alt: string;
}
