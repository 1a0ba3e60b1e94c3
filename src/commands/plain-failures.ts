/** Imported first by every command: whatever stops it is told in plain sentences, with exit code 1; and nothing acts on the terminal. */
import { failureText } from '../print/failure.ts';
import { guardTerminal } from '../print/visible.ts';

guardTerminal();

process.on('uncaughtException', (thrown) => {
  console.error(failureText(thrown));
  process.exit(1);
});
