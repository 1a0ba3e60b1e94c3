/** The page that a reader comes to first. */
import type { Highlight, Link, Marks, PagePlot } from './shared.ts';

export interface HomeModel {
  readonly kind: 'home';
  readonly notes: readonly {
    readonly link: Link;
    readonly date: string;
    readonly summary: string;
    readonly device: string;
    readonly marks: Marks;
    readonly highlights: readonly Highlight[];
    /** The chart at the note's head. */
    readonly lead: PagePlot | null;
    readonly authors: readonly string[];
    readonly scripts: readonly { readonly link: Link; readonly length: string }[];
  }[];
  /** With what they are rated for, in a few words. */
  readonly devices: readonly (Link & { readonly about: string })[];
  /** Scripts that speak for no published note; the others stand under theirs. */
  readonly scripts: readonly { readonly link: Link; readonly date: string; readonly length: string; readonly marks: Marks }[];
}
