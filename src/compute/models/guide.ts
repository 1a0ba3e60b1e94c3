/** A page of the user's guide. */
export interface GuideModel {
  readonly kind: 'guide';
  readonly title: string;
  readonly html: string;
  /** Its parts, for the list at its head; none where there are few. */
  readonly sections: readonly { readonly id: string; readonly title: string }[];
  /** The page that comes after it; null of the last. */
  readonly next: { readonly path: string; readonly title: string } | null;
}
