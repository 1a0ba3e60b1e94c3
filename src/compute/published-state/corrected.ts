/** A correction in one clause, for texts. */

/** "71.3 °C is now 72.1 °C"; of the author's own words what the data says against them: `stated "about 71 degrees", and the data says …`. */
export function corrected({ was, is }: { readonly was: string; readonly is: string }): string {
  return is.startsWith('the data says ') ? `stated "${was}", and ${is}` : `${was} is now ${is}`;
}
