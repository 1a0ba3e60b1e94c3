/** The Chromium that comes through npm, with the libraries that a bare machine lacks. */
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import chromium, { inflate } from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';
import { PATIENCE } from './patience.ts';

const PACKAGE = join(dirname(fileURLToPath(import.meta.resolve('@sparticuz/chromium'))), '..');

let started: Promise<Browser> | undefined;

/** One for all test files of a worker. What closes it closes its contexts, so that the next file finds it as new; it ends with the worker. */
export async function openBrowser(): Promise<Browser> {
  if (!(await started)?.isConnected()) started = startBrowser();
  const browser = (await started)!;
  browser.close = async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
  };
  return browser;
}

/** Starts it. Its packaged arguments are not used: they switch web security off, which would make security tests prove nothing. */
export async function startBrowser(): Promise<Browser> {
  const libraries = await inflate(join(PACKAGE, 'bin', 'al2023.tar.br'));
  const env = Object.fromEntries(Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined));
  const browser = await driver.launch({
    executablePath: await chromium.executablePath(),
    args: ['--no-sandbox', '--disable-gpu'],
    env: {
      ...env,
      LD_LIBRARY_PATH: [join(libraries, 'lib'), process.env.LD_LIBRARY_PATH ?? ''].filter((path) => path !== '').join(':'),
    },
  });
  const open = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await open(options);
    context.setDefaultTimeout(PATIENCE);
    return context;
  };
  return browser;
}
