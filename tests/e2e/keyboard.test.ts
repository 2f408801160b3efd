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

const trialsInOrder = [1, 2, 3, 4].map((number) => `countermovement-both-${number}.csv`);

async function openTraces(size: { readonly width: number; readonly height: number }) {
  const opened = await application.open(size);
  await opened.page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Traces" }).click();
  return opened;
}

/** Waits until the curve of a trial stands on the screen. */
async function drawn(page: Page, file: string): Promise<void> {
  await page.getByText(`· ${file}`).waitFor();
  await page.locator(".plot[data-drawn]").waitFor();
}

async function seenCount(page: Page): Promise<number> {
  const words = await page.locator(".session-list .muted").first().textContent();
  return Number(/(\d+) seen/.exec(words ?? "")?.[1]);
}

test("Alt with an arrow goes through the trials from an event's handle and from its time, and moves no event", async () => {
  const { page, context } = await openTraces({ width: 1280, height: 800 });
  await drawn(page, "countermovement-both-1.csv");
  const height = () => page.locator('[data-measure="jumpHeightImpulse"] [data-side="both"]').textContent();
  const lastStep = () => page.getByRole("button", { name: "Undo" }).getAttribute("title");
  const stepBefore = await lastStep();
  const heights: (string | null)[] = [];
  for (const file of trialsInOrder.slice(0, 3)) {
    await drawn(page, file);
    heights.push(await height());
    await page.keyboard.press("Alt+ArrowDown");
  }
  for (const key of ["Alt+ArrowUp", "Alt+ArrowLeft"]) {
    for (const focus of [page.getByRole("slider", { name: "take-off" }), page.getByLabel("Time of onset in seconds")]) {
      await page.locator('[data-trial^="countermovement-both-3.csv"]').click();
      await drawn(page, "countermovement-both-3.csv");
      await focus.focus();
      await page.keyboard.press(key);
      await drawn(page, "countermovement-both-2.csv");
    }
  }
  // Other modifiers are nobody's: the event stays where it is.
  await page.getByRole("slider", { name: "take-off" }).focus();
  for (const key of ["Control+ArrowRight", "Meta+ArrowUp", "Control+Shift+ArrowLeft"]) await page.keyboard.press(key);
  await page.getByLabel("Time of take-off in seconds").focus();
  for (const key of ["Control+ArrowUp", "Meta+ArrowDown"]) await page.keyboard.press(key);
  // Longer than a nudge waits before it is sent.
  await page.waitForTimeout(900);
  for (const [place, file] of trialsInOrder.slice(0, 3).entries()) {
    await page.locator(`[data-trial^="${file}"]`).click();
    await drawn(page, file);
    expect(await height()).toBe(heights[place]);
  }
  expect(await lastStep()).toBe(stepBefore);
  await context.close();
});

test("Ctrl+Enter marks the trial that is drawn as seen and goes on, wherever the focus is", async () => {
  const { page, context } = await openTraces({ width: 1280, height: 800 });
  await page.locator('[data-trial^="countermovement-both-2.csv"]').click();
  await drawn(page, "countermovement-both-2.csv");
  const before = await seenCount(page);
  const focuses = [
    page.getByRole("slider", { name: "take-off" }),
    page.getByLabel("Time of onset in seconds"),
    page.locator('[data-trial^="countermovement-both-3.csv"]'),
    page.getByRole("button", { name: "Mark as seen" }),
    page.getByLabel("Velocity"),
  ];
  for (const [place, focus] of focuses.entries()) {
    await focus.focus();
    await page.keyboard.press(place % 2 === 0 ? "Control+Enter" : "Meta+Enter");
    await page.getByText(`${before + place + 1} seen`).waitFor();
    await page.locator(".plot[data-drawn]").waitFor();
  }
  // A dialog that was closed leaves the keys as they were.
  await page.getByRole("button", { name: "Exclude…" }).click();
  await page.getByLabel("Why it does not count").press("Escape");
  await page.keyboard.press("Control+Enter");
  await page.getByText(`${before + 6} seen`).waitFor();
  await page.locator(".plot[data-drawn]").waitFor();
  // A reason that was written is kept with the trial it was written for.
  await page.getByRole("button", { name: "Exclude…" }).click();
  await page.getByLabel("Why it does not count").fill("stepped");
  await page.keyboard.press("Control+Enter");
  await page.getByText(`${before + 7} seen, 1 excluded`).waitFor();
  await context.close();
});

test("a key that is held marks nothing, and neither does a trial whose curve is not on the screen", async () => {
  const { page, context } = await openTraces({ width: 1280, height: 800 });
  await drawn(page, "countermovement-both-1.csv");
  const before = await seenCount(page);
  await page.locator('[data-trial^="countermovement-right-3.csv"]').click();
  await drawn(page, "countermovement-right-3.csv");
  await page.keyboard.down("Control");
  // The first press may mark; the repeats of a held key, which a browser sends as presses too, may not.
  await page.keyboard.down("Enter");
  for (let repeat = 0; repeat < 24; repeat += 1) await page.keyboard.down("Enter");
  await page.keyboard.up("Enter");
  await page.keyboard.up("Control");
  const after = before + 1;
  await page.getByText(`${after} seen`).waitFor();
  await page.getByText("· countermovement-right-4.csv").waitFor();
  expect(await seenCount(page)).toBe(after);

  // While the curve has not come from the host, the trial is not marked, however often the key is pressed.
  await page.route("**/trials.trace", async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await route.continue();
  });
  await page.keyboard.press("Alt+ArrowUp");
  await page.keyboard.press("Alt+ArrowUp");
  for (let press = 0; press < 3; press += 1) await page.keyboard.press("Control+Enter");
  await page.getByText("is not drawn yet").waitFor();
  expect(await seenCount(page)).toBe(after);
  await page.unroute("**/trials.trace");
  await context.close();
});

test("where less than 200 pixels of the curve fit, the screen says what to do, and nothing is marked until it is done", async () => {
  const { page, context } = await openTraces({ width: 1280, height: 190 });
  await page.locator('[data-trial^="countermovement-both-4.csv"]').click();
  await drawn(page, "countermovement-both-4.csv");
  await page.getByRole("button", { name: "Not seen yet" }).click();
  await page.getByRole("button", { name: "Mark as seen" }).waitFor();
  const before = await seenCount(page);
  await page.keyboard.press("Control+Enter");
  await page.getByText(/of its curve's \d+ pixels are on the screen; a trial counts as seen from 200 pixels/).waitFor();
  expect(await seenCount(page)).toBe(before);
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.keyboard.press("Control+Enter");
  await page.getByText(`${before + 1} seen`).waitFor();
  await context.close();
});
