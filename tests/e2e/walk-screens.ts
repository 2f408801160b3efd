import type { Page } from "playwright-core";
import type { LaunchedApplication } from "./launched-application.ts";
import { axeFaults, sidewaysFaults } from "./screen-faults.ts";

interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

/** Every size that the screens are made for. */
export const screenSizes: readonly ScreenSize[] = [
  { width: 1024, height: 768 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];

/** What was wrong, and how much was looked at. */
export interface Walk {
  /** The states looked at, in order. */
  readonly states: readonly string[];
  /** A line each: state, size, fault. */
  readonly faults: readonly string[];
  /** What the console complained of. */
  readonly problems: readonly string[];
  /** Every address the page asked for. */
  readonly requests: readonly string[];
}

/** The areas that work today, as the navigation names them. */
const areas = ["Athletes", "Recordings", "Traces", "Sides", "Sheet"] as const;

/**
 * Goes through every area and its states on one page, which takes every size in turn in each of them: nothing may stand out
 * sideways at any size, and axe looks at those of `axeAt`.
 */
export async function walkScreens(
  application: LaunchedApplication,
  { colourScheme, axeAt }: { readonly colourScheme: "light" | "dark"; readonly axeAt: readonly ScreenSize[] },
): Promise<Walk> {
  const { page, context, problems, requests } = await application.open({ colourScheme });
  const states: string[] = [];
  const faults: string[] = [];
  const look = async (state: string) => {
    states.push(state);
    for (const size of screenSizes) {
      await resize(page, size);
      const found = [...(await sidewaysFaults(page)), ...(axeAt.includes(size) ? await axeFaults(page) : [])];
      for (const fault of found) faults.push(`${state}, ${size.width} × ${size.height}: ${fault}`);
    }
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
  await context.close();
  return { states, faults, problems, requests };
}

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

/** Gives the page a size, and its drawings two frames to take it. */
async function resize(page: Page, size: ScreenSize): Promise<void> {
  await page.setViewportSize(size);
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve(undefined)))),
  );
  await settled(page);
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
