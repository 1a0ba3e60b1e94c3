/** The package.json of a publication. */

export interface NewPackage {
  /** The folder's name, as a package may be called. */
  readonly name: string;
  /** Names of the tool's commands. */
  readonly commands: readonly string[];
  /** Where npm finds the tool; undefined where the file says so already. */
  readonly tool?: string;
  /** Which packages may run a script of their own when they are installed: Node comes by one. */
  readonly allowScripts: Readonly<Record<string, boolean>>;
}

/** The text, and what its author should know of it; or why there is none. */
export type PackageText = { readonly text: string; readonly notes: readonly string[] } | { readonly fault: string };

type Json = Readonly<Record<string, unknown>>;

const FAULT = 'package.json is there, and is no JSON object. Mend it or move it away, then run the same command again.';

/** What stands in a package.json already stays as it is; scripts and the dependency that it lacks are added, in its own indentation. */
export function packageText(before: string | undefined, { name, commands, tool, allowScripts }: NewPackage): PackageText {
  const scripts = Object.fromEntries(commands.map((command) => [command, `soakproof ${command}`]));
  const dependencies = tool === undefined ? {} : { soakproof: tool };
  if (before === undefined) {
    const whole = { name, private: true, type: 'module', scripts, dependencies, allowScripts };
    return { text: `${JSON.stringify(whole, null, 2)}\n`, notes: [] };
  }
  const theirs = objectOf(before);
  if (theirs === undefined) return { fault: FAULT };
  const added = { scripts, dependencies, allowScripts };
  const after: Record<string, unknown> = { ...theirs };
  for (const [key, ours] of Object.entries(added)) {
    const own = theirs[key] ?? {};
    if (!isObject(own)) return { fault: FAULT };
    if (Object.keys(ours).some((each) => !Object.hasOwn(own, each))) after[key] = { ...own, ...missing(ours, own) };
  }
  const own = (theirs.scripts ?? {}) as Json;
  const taken = commands.filter((command) => Object.hasOwn(own, command) && own[command] !== scripts[command]);
  const notes = taken.map(
    (command) =>
      `package.json has a script \`${command}\` of its own, which stays. Where a text says \`npm run ${command}\`, run \`npx soakproof ${command}\`.`,
  );
  return { text: JSON.stringify(after) === JSON.stringify(theirs) ? before : likeText(after, before), notes };
}

function missing(ours: Json, own: Json): Json {
  return Object.fromEntries(Object.entries(ours).filter(([key]) => !Object.hasOwn(own, key)));
}

function objectOf(text: string): Json | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isObject(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** As JSON with the blanks, line ends and last line of a text. */
function likeText(value: object, before: string): string {
  const indent = /^\s*\{\s*?\n([ \t]+)"/.exec(before)?.[1] ?? '  ';
  const text = `${JSON.stringify(value, null, indent)}${before.endsWith('\n') ? '\n' : ''}`;
  return before.includes('\r\n') ? text.replaceAll('\n', '\r\n') : text;
}
