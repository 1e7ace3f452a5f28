import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

interface AxeFinding {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly string[]; readonly failureSummary: string }[];
}

/** What axe has against the page, in sentences. The page's policy must have been lifted, for it forbids scripts. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: AXE });
  const found = await page.evaluate<readonly AxeFinding[]>(
    "axe.run(document, { iframes: false, resultTypes: ['violations'] }).then((result) => result.violations)",
  );
  return found.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary}`).join('; ')}`,
  );
}
