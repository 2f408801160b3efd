import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { writeBatterySession } from "./battery-session.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { faultsOf } from "./screen-faults.ts";

/** The areas that work today, as the navigation names them. */
const areas = ["Athletes", "Recordings", "Traces", "Sides", "Sheet"] as const;

const sizes = [
  { width: 1024, height: 768 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const;

let application: LaunchedApplication;
let parent: string;
beforeAll(async () => {
  application = await launchApplication();
  parent = mkdtempSync(join(tmpdir(), "counterpoise-screens-"));
  writeBatterySession(parent, "battery");
});
afterAll(async () => {
  await application?.close();
  rmSync(parent, { recursive: true, force: true });
});

/** Waits until nothing is on its way any more. */
async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      document.querySelector('[aria-busy="true"]') === null &&
      !/(Drawing|Writing the sheet|Reading the recordings|Reading the register) …/.test(
        document.body.textContent ?? "",
      ),
  );
}

async function goTo(page: Page, area: (typeof areas)[number]): Promise<void> {
  await page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();
  await settled(page);
}

/** Shows the session of the demo world whose words in the choice of sessions contain the given ones. */
async function showSession(page: Page, words: string): Promise<void> {
  const choice = page.getByLabel("Session shown");
  const value = await choice.locator("option", { hasText: words }).first().getAttribute("value");
  await choice.selectOption(value);
  await page.waitForFunction((wanted) => document.querySelector("select")?.value === wanted, value);
  await settled(page);
}

describe.each(["light", "dark"] as const)("the screens in %s", (colourScheme) => {
  test.each(sizes)(
    "$width × $height: axe finds nothing, nothing scrolls sideways, the console is silent",
    async ({ width, height }) => {
      const { page, context, problems, requests } = await application.open({ width, height, colourScheme });
      const faults: string[] = [];
      const look = async (state: string) => {
        for (const fault of await faultsOf(page)) faults.push(`${state}: ${fault}`);
      };

      for (const area of areas) {
        await goTo(page, area);
        await look(area);
      }

      await goTo(page, "Recordings");
      await page.getByRole("button", { name: "Change what was stated" }).click();
      await look("what was stated, open");

      await goTo(page, "Traces");
      for (const curve of ["Velocity", "Displacement", "Power"]) await page.getByLabel(curve, { exact: true }).check();
      await page.getByRole("button", { name: "Exclude…" }).click();
      await page.getByRole("button", { name: "Exclude", exact: true }).click();
      await page.getByText("The reason is missing").waitFor();
      await look("extra axes and the form to exclude, refused");

      await showSession(page, "month 5.5");
      await look("Traces of a closed gate");
      await goTo(page, "Sides");
      await page.getByText("withheld today").first().waitFor();
      await look("Sides of a closed gate");

      await showSession(page, "deliberately doubtful");
      await goTo(page, "Recordings");
      await look("refused files");
      await goTo(page, "Traces");
      await look("Traces of refused files");

      await goTo(page, "Recordings");
      await page.getByRole("button", { name: "Close all sessions" }).click();
      await page.getByText("No session is open").waitFor();
      await look("nothing open");
      await goTo(page, "Sides");
      await look("Sides with nothing open");
      await goTo(page, "Recordings");
      await page.getByRole("button", { name: "Open the simulated demo world" }).click();
      await page.getByLabel("Session shown").waitFor();

      expect(faults).toEqual([]);
      expect(problems).toEqual([]);
      const { origin } = new URL(application.address);
      expect(requests.filter((address) => !address.startsWith(origin) && !address.startsWith("data:"))).toEqual([]);
      await context.close();
    },
  );
});
