/** How long a page may take on however busy a machine: longer than anything that is right, so that no test judges by time. */
export const PATIENCE = 300_000;
