/** What axe finds in a page, by the rules that it has for WCAG and good practice. A page's own policy would block it: open the page with `bypassCSP`. */
import AxeSource from 'axe-core';
import type { Page } from 'playwright-core';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** A line for each rule that the page breaks, or those of its elements that are looked at, with the first element that breaks it. */
export async function violationsIn(page: Page, selector = 'html'): Promise<string[]> {
  await page.evaluate(AxeSource.source);
  const run = `axe.run(${JSON.stringify(selector)}, { resultTypes: ["violations"] })`;
  const found = (await page.evaluate(run)) as { violations: Violation[] };
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
}
