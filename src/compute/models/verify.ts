/** The page that checks files against their digests. */
import type { Link } from './shared.ts';

/** Every file of data that a site publishes, by the page that it belongs to, with its digest. */
export interface VerifyModel {
  readonly kind: 'verify';
  /** Path of the digests as JSON. */
  readonly digests: string;
  readonly invented: boolean;
  readonly groups: readonly {
    readonly of: Link;
    readonly files: readonly {
      readonly what: string;
      readonly name: string;
      /** Null where it is not offered here. */
      readonly path: string | null;
      readonly elsewhere?: string;
      readonly sha256: string;
    }[];
  }[];
}
