/** The address of a page as it is read aloud and typed; '' where nobody says where the site stands. */
export function bareAddress(site: string, path: string): string {
  return site === '' ? '' : `${site}${path}`.replace(/^https?:\/\//, '');
}
