/** As much of citation-js as the tests use; it brings no types. */
declare module '@citation-js/core' {
  export class Cite {
    constructor(input: unknown);
    readonly data: unknown;
  }
}
declare module '@citation-js/plugin-bibtex';
