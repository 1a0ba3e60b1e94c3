/** The page at an address that leads on: plain HTML that works on any static host and without scripting. */

import { escaped } from '../feeds/escaped.ts';
import { digest } from '../store/digest.ts';

/**
 * A refresh forgets what follows the `#`, by which figures and numbers are found: with scripting it goes along. Behind the refresh, so
 * that this navigation is the later one.
 */
const WITH_FRAGMENT = "if(location.hash)location.replace(document.querySelector('link').href.split('#')[0]+location.hash)";
const ITS_DIGEST = Buffer.from(digest(WITH_FRAGMENT), 'hex').toString('base64');

/** HTML with a refresh, a link and the canonical address, all relative to where it stands: `from` a folder, ending in a slash. */
export function redirectPage(from: string, to: string, title: string): string {
  const up = '../'.repeat(from.split('/').length - 1);
  const address = escaped(up + to);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="default-src 'none'; script-src 'sha256-${ITS_DIGEST}'">
<meta http-equiv="refresh" content="0; url=${address}">
<meta name="robots" content="noindex">
<link rel="canonical" href="${address}">
<title>${escaped(title)}</title>
<script>${WITH_FRAGMENT}</script>
</head>
<body>
<p>This address leads to <a href="${address}">${escaped(title)}</a>.</p>
</body>
</html>
`;
}
