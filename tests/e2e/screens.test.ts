import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";

/** The areas that work today, as the navigation names them. */
const areas = ["Recordings", "Traces", "Sides", "Sheet"] as const;

let application: LaunchedApplication;
beforeAll(async () => {
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
});

describe.each(["light", "dark"] as const)("the screens in %s", (colourScheme) => {
  test.each(areas)("%s: axe finds nothing, nothing scrolls sideways at 1024, the console is silent", async (area) => {
    const { page, context, problems, requests } = await application.open({ width: 1024, height: 768, colourScheme });
    await page
      .getByRole("navigation")
      .getByRole("link", { name: area })
      .or(page.getByRole("navigation").getByRole("button", { name: area }))
      .first()
      .click();
    await page.waitForLoadState("networkidle");
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBeLessThanOrEqual(0);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ")}`)).toEqual([]);
    expect(problems).toEqual([]);
    const { origin } = new URL(application.address);
    expect(requests.filter((address) => !address.startsWith(origin) && !address.startsWith("data:"))).toEqual([]);
    await context.close();
  });
});
