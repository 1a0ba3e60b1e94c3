/** The page that a reader comes to first. */
import type { Highlight, Link, Marks } from './shared.ts';

export interface HomeModel {
  readonly kind: 'home';
  readonly notes: readonly {
    readonly link: Link;
    readonly date: string;
    readonly summary: string;
    readonly device: string;
    readonly marks: Marks;
    readonly highlights: readonly Highlight[];
    readonly scripts: readonly { readonly link: Link; readonly length: string }[];
  }[];
  readonly devices: readonly Link[];
  /** Scripts that speak for no published note; the others stand under theirs. */
  readonly scripts: readonly { readonly link: Link; readonly date: string; readonly length: string; readonly marks: Marks }[];
}
