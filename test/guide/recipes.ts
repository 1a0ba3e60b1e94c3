/** What the guide shows of a host's configuration: written from the headers that the site asks for, so that both say the same. */
import { HEADERS } from '../../src/compute/outgoing/headers.ts';

const [all, assets] = ['*', 'assets/*'].map((files) => HEADERS.find((rule) => rule.files === files)!.set);
const types = HEADERS.flatMap(({ files, set }) =>
  files.startsWith('*.') ? [[files.slice(2), set['Content-Type']!] as const] : [],
);
const feeds = HEADERS.filter(({ files }) => /^\w+\.xml$/.test(files)).map(
  ({ files, set }) => [files, set['Content-Type']!] as const,
);

/** For servers that read a file `.htaccess` in the folder that they show. */
export function folderFile(): string {
  const ofAll = Object.entries(all!).map(([name, value]) => `Header always set ${name} "${value}"`);
  return [
    'DirectoryIndex index.html',
    'ErrorDocument 404 /404.html',
    'AddDefaultCharset off',
    ...types.map(([ending, type]) => `AddType '${type}' .${ending}`),
    ...ofAll,
    '<If "%{REQUEST_URI} =~ m#/assets/[^/]+$#">',
    ...Object.entries(assets!).map(([name, value]) => `  Header always set ${name} "${value}"`),
    '</If>',
    ...feeds.map(([file, type]) => `<Files "${file}">\n  ForceType ${type}\n</Files>`),
    '',
  ].join('\n');
}

/** For servers whose configuration has blocks `server` and `location`. */
export function serverBlock(): string {
  const added = (set: Readonly<Record<string, string>>, indent: string) =>
    Object.entries(set).map(([name, value]) => `${indent}add_header ${name} "${value}" always;`);
  const plain = types.map(([ending, type]) => [ending, type.split(';')[0]!] as const);
  const named = [...new Set(types.filter(([, type]) => type.includes('charset')).map(([, type]) => type.split(';')[0]!))];
  return [
    'server {',
    '  root /srv/site;',
    '  index index.html;',
    '  error_page 404 /404.html;',
    '  charset utf-8;',
    // text/html is of that list by itself.
    `  charset_types ${named.filter((type) => type !== 'text/html').join(' ')};`,
    '  types {',
    ...[...Map.groupBy(plain, ([, type]) => type)].map(
      ([type, endings]) => `    ${type} ${endings.map(([ending]) => ending).join(' ')};`,
    ),
    '  }',
    ...added(all!, '  '),
    '  location /assets/ {',
    ...added({ ...all!, ...assets! }, '    '),
    '  }',
    ...feeds.flatMap(([file, type]) => [`  location = /${file} { types { } default_type ${type}; }`]),
    '}',
    '',
  ].join('\n');
}
