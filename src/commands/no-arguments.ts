/** For commands that take none: what was meant by one would else be ignored in silence. */

/** Stops with a sentence where the command line holds anything. */
export function noArguments(command: string): void {
  const [first] = process.argv.slice(2);
  if (first === undefined) return;
  console.error(`\`npm run ${command}\` takes no arguments, found ${first}. See README.md for what each command does.`);
  process.exit(1);
}
