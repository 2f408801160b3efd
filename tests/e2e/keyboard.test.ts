import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";

let application: LaunchedApplication;
beforeAll(async () => {
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
});

/** More presses of the Tab key than any screen has stops. */
const mostStops = 300;

/** What the Tab key reaches, in order, until it comes round: the name of each stop, and whether its focus is drawn. */
async function tabStops(page: Page): Promise<readonly { readonly name: string; readonly drawn: boolean }[]> {
  const stops: { name: string; drawn: boolean }[] = [];
  let roundsEnded = 0;
  for (let press = 0; press < mostStops; press += 1) {
    await page.keyboard.press("Tab");
    const stop = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return undefined;
      const labelled = element as HTMLElement & { readonly labels?: NodeListOf<HTMLLabelElement> };
      const label =
        element.getAttribute("aria-label") ?? labelled.labels?.[0]?.textContent ?? element.textContent ?? "";
      const marked = [
        element,
        ...element.querySelectorAll("*"),
        ...(labelled.labels ?? []),
        element.parentElement ?? element,
      ];
      const drawn = marked.some((each) => {
        const style = getComputedStyle(each);
        return (style.outlineStyle !== "none" && style.outlineWidth !== "0px") || style.boxShadow !== "none";
      });
      return { name: label.replace(/\s+/g, " ").trim(), drawn };
    });
    if (stop !== undefined) stops.push(stop);
    else roundsEnded += 1;
    // The first round began where the page was last clicked; the second has them all.
    if (roundsEnded === 2) break;
  }
  return stops;
}

test("every area, trial, event and decision is reached with the Tab key, and its focus can be seen", async () => {
  const { page, context } = await application.open({ width: 1280 });
  await page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Traces" }).click();
  await page.getByRole("slider", { name: "take-off" }).waitFor();
  const stops = await tabStops(page);
  const names = stops.map((stop) => stop.name);
  for (const wanted of [
    "Athletes",
    "Recordings",
    "Traces",
    "Sides",
    "Sheet",
    "Open recordings…",
    "Mark as seen",
    "Exclude…",
    "Velocity",
  ]) {
    expect(names).toContain(wanted);
  }
  for (const event of ["onset", "end of unweighting", "lowest position", "take-off", "touchdown", "landing end"]) {
    expect(names).toContain(event);
    expect(names).toContain(`Time of ${event} in seconds`);
  }
  expect(names.filter((name) => name.includes("not yet")).length).toBeGreaterThanOrEqual(12);
  expect(stops.filter((stop) => !stop.drawn).map((stop) => stop.name)).toEqual([]);
  await context.close();
});

test("a trial is gone through by keys alone: seen, next, moved, taken back", async () => {
  const { page, context } = await application.open({ width: 1280 });
  await page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Traces" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("slider", { name: "take-off" }).waitFor();
  await page.keyboard.press("Control+Enter");
  await page.getByText("1 seen").waitFor();
  await page.getByText("· countermovement-both-2.csv").waitFor();
  await page.getByRole("slider", { name: "onset" }).focus();
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Reset onset to detected" }).waitFor();
  await page.keyboard.press("Control+z");
  await page.getByRole("button", { name: "Reset onset to detected" }).waitFor({ state: "detached" });
  await context.close();
});
