/** The page at an address that leads on: plain HTML that works on any static host and without scripting. */

/** HTML with a refresh, a link and the canonical address, all relative to where it stands: `from` a folder, ending in a slash. */
export function redirectPage(from: string, to: string, title: string): string {
  const up = '../'.repeat(from.split('/').length - 1);
  const address = escaped(up + to);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="default-src 'none'">
<meta http-equiv="refresh" content="0; url=${address}">
<meta name="robots" content="noindex">
<link rel="canonical" href="${address}">
<title>${escaped(title)}</title>
</head>
<body>
<p>This address leads to <a href="${address}">${escaped(title)}</a>.</p>
</body>
</html>
`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}
