// Before `npm pack` in the clone: it would make a file of the right name with TypeScript in it, which no Node runs below node_modules.
console.error(
  '`npm pack` would pack the clone as it is, and that does not run where it is installed. `npm run package` writes the package.',
);
process.exit(1);
