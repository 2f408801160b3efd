import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

/** What axe finds, a line each. */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  // The builder puts axe into the page with its first look; asked again directly, axe takes a third of the time.
  if (await page.evaluate(() => !("axe" in window))) await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(options: object): Promise<AxeReport> } };
    const { violations } = await axe.run({ resultTypes: ["violations"] });
    return violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ")}`);
  });
}

interface AxeReport {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
}

/** A line where something stands out of the page to the right. */
export async function sidewaysFaults(page: Page): Promise<readonly string[]> {
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  return sideways > 0 ? [`${sideways} px stand out sideways`] : [];
}

/** What is wrong with the screen as it stands, in words; nothing where it is as it must be. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  return [...(await sidewaysFaults(page)), ...(await axeFaults(page))];
}
