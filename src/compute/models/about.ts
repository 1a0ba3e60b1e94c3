/** The page about the publication. */
export interface AboutModel {
  readonly kind: 'about';
  readonly title: string;
  readonly html: string;
}
