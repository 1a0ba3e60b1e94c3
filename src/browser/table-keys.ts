/** Tables of the page by keyboard. */
import { oneStopEach } from './table-keys/one-stop.ts';

oneStopEach(document);
