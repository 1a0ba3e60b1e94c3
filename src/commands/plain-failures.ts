/** Imported first by every command: whatever stops it is told in plain sentences, with exit code 1. */
import { failureText } from '../print/failure.ts';

process.on('uncaughtException', (thrown) => {
  console.error(failureText(thrown));
  process.exit(1);
});
