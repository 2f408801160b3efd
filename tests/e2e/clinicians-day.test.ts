import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { ResultDocument } from "../../core/sheet/result-document.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { writeMixedLayouts } from "./mixed-layouts.ts";
import { faultsOf } from "./screen-faults.ts";

/** A machine that is busy with something else needs long for a step. */
const stepMilliseconds = 90_000;

let application: LaunchedApplication;
let folder: string;
let files: readonly string[];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "counterpoise-day-"));
  files = writeMixedLayouts(join(folder, "today"));
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
  rmSync(folder, { recursive: true, force: true });
});

const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: true }).first().click();
const settled = (page: Page) => page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
const goTo = (page: Page, area: string) =>
  page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();

/** The ISO date some days ago on this machine's calendar. */
function daysAgo(days: number): string {
  const day = new Date();
  day.setDate(day.getDate() - days);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** The statuses of the criteria as Sides shows them. */
async function statuses(page: Page): Promise<readonly string[]> {
  await goTo(page, "Sides");
  await settled(page);
  return page.locator(".criteria-list").first().locator(".status").allInnerTexts();
}

/** The whole result, as a person takes it along. */
async function result(page: Page): Promise<ResultDocument> {
  await goTo(page, "Sheet");
  const download = page.waitForEvent("download");
  await press(page, "JSON, the whole result");
  return JSON.parse(readFileSync(await (await download).path(), "utf8"));
}

async function answer(page: Page, question: RegExp, value: "yes" | "no"): Promise<void> {
  await page.getByRole("radiogroup", { name: question }).getByRole("radio", { name: value }).check();
}

async function read(page: Page, moment: string, pain: string): Promise<void> {
  await press(page, "Add a reading");
  await page.getByLabel("Moment of the session").selectOption({ label: moment });
  await page.getByLabel("Pain, 0 to 10").fill(pain);
  await press(page, "Keep the reading");
  await page.getByRole("dialog").waitFor({ state: "detached" });
}

/** How many trials a line of the protocol counts, of both legs together; undefined for a line about something else. */
function countedIn(line: string): number | undefined {
  const counts = [...line.matchAll(/(\d+) of \d+(?! landings)/g)].map(([, count]) => Number(count));
  return /jump/i.test(line) && counts.length > 0 ? counts.reduce((sum, count) => sum + count, 0) : undefined;
}

/** How many trials Sides uses of each test of the protocol, in its order. */
function usedIn({ comparisons }: ResultDocument): readonly number[] {
  const used = (test: string, legs: string) =>
    comparisons
      .filter((each) => each.test === test && each.legs === legs && each.notComparable === undefined)
      .map(({ involved, uninvolved }) => (involved?.trials ?? 0) + (legs === "both" ? 0 : (uninvolved?.trials ?? 0)));
  const most = (test: string, legs: string) => Math.max(0, ...used(test, legs));
  return [
    most("countermovementJump", "both"),
    most("dropJump", "both"),
    most("countermovementJump", "single"),
    most("dropJump", "single"),
  ];
}

test("on a clinician's day nothing counts that Sides refuses, nothing is met before it was asked, and a milder reading releases nothing", async () => {
  const { page, context, problems } = await application.open({ width: 1440, height: 900 });
  page.setDefaultTimeout(stepMilliseconds);
  await goTo(page, "Athletes");
  await press(page, "Start your own register");
  await press(page, "Add an athlete");
  await page.getByLabel("Code", { exact: true }).fill("GH-41");
  await press(page, "Keep");
  await press(page, "Add an operation");
  await page.getByLabel("Side", { exact: true }).selectOption("right");
  await page.getByLabel("Body part").selectOption("knee");
  await page.getByLabel("Makes its side the involved one").selectOption("yes");
  await page.getByLabel("Operation", { exact: true }).fill("anterior cruciate ligament reconstruction");
  await page.getByLabel("Date of the operation", { exact: true }).fill(daysAgo(300));
  await page.getByLabel("Meniscus or cartilage repaired").selectOption("no");
  await page.getByLabel("Body part").selectOption("knee");
  await page.getByLabel("Makes its side the involved one").selectOption("yes");
  await press(page, "Keep");
  await press(page, "Start the next session");
  await page.getByLabel("Protocol", { exact: true }).selectOption("return-to-pivoting-sport");
  await page.getByLabel(/^They are asked later/).check();
  await press(page, "Begin the session");
  await page.getByText("Not asked yet before the session.").waitFor();

  await page.getByLabel("Recordings of this session").setInputFiles([...files]);
  await page.getByText("24 recordings taken in.").waitFor();
  const lines = page.locator(".progress ul.muted li");
  const counted = async () => (await lines.allInnerTexts()).map(countedIn).filter((count) => count !== undefined);
  const countedBefore = await counted();
  expect(countedBefore).toEqual([4, 0, 8, 0]);
  expect(new Set(await statuses(page))).toEqual(new Set(["withheld today"]));
  const before = await result(page);
  expect(before.trials.filter(({ status }) => status === "analysed")).toHaveLength(24);
  expect(before.comparisons.length).toBeGreaterThan(0);
  expect(countedBefore.map((count, at) => count > (usedIn(before)[at] ?? 0))).toEqual([false, false, false, false]);

  // What is missing is asked where the person stands; each likely answer is one click.
  await goTo(page, "Athletes");
  const waits = page.getByRole("region", { name: "What trials wait for" });
  await waits.waitFor();
  for (let left = 12; left > 0 && (await waits.count()) > 0; left -= 1) {
    await waits.getByRole("button").first().click();
    await settled(page);
  }
  await waits.waitFor({ state: "detached" });
  const countedAfter = await counted();
  const after = await result(page);
  expect(countedAfter).toEqual([4, 4, 8, 8]);
  expect(countedAfter).toEqual(usedIn(after));
  expect(new Set(await statuses(page))).toEqual(new Set(["withheld today"]));

  // Answered at last: only what was asked opens, and the three questions open the rest.
  await goTo(page, "Athletes");
  await press(page, "Ask before the session");
  await page.getByLabel("Pain now in the involved knee").fill("1");
  await page.getByLabel("Effusion now").selectOption("none");
  for (const question of [/Fever/, /given way/, /locked/, /new injury/, /calf/, /restrict/, /painkiller/]) {
    await answer(page, question, "no");
  }
  await answer(page, /practised/, "yes");
  await page.getByLabel("Answered by").fill("K. L.");
  await press(page, "Keep the answers");
  await page.getByText(/^Answered before the session/).waitFor();
  const half = await result(page);
  const legsOf = (document: ResultDocument, wanted: (each: ResultDocument["criteria"][number]) => boolean) =>
    document.criteria.filter(wanted).map(({ status }) => status);
  const isTwoLegJump = (each: ResultDocument["criteria"][number]) =>
    each.test === "countermovementJump" && each.legs === "both";
  expect(legsOf(half, isTwoLegJump)).not.toContain("withheld-today");
  expect(new Set(legsOf(half, (each) => !isTwoLegJump(each)))).toEqual(new Set(["withheld-today"]));
  await goTo(page, "Athletes");
  // By keys alone: pain, swelling, giving way, and the name that was carried over.
  await page.getByRole("button", { name: "Ask before the first single-leg or drop test" }).focus();
  await page.keyboard.press("Enter");
  await page.getByLabel("Pain now in the involved knee").focus();
  await page.keyboard.type("2");
  await page.keyboard.press("Tab");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.keyboard.press("Tab");
  expect(await page.getByLabel("Answered by").evaluate((field) => field === document.activeElement)).toBe(true);
  expect(await page.getByLabel("Swelling now").inputValue()).toBe("none");
  await page.keyboard.press("Enter");
  await page.getByText(/^Answered before the first single-leg or drop test/).waitFor();
  expect(await statuses(page)).not.toContain("withheld today");

  // Pain rises: everything is withheld, and a milder reading afterwards releases nothing.
  await goTo(page, "Athletes");
  await read(page, "During", "6");
  await page.getByText("Every jump test is closed today.").waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await read(page, "After", "1");
  await page.getByText("Every jump test is closed today.").waitFor();
  expect(new Set(await statuses(page))).toEqual(new Set(["withheld today"]));
  const closed = await result(page);
  const indices = ({ comparisons }: ResultDocument) => comparisons.map(({ index, difference }) => index ?? difference);
  expect(indices(closed)).toEqual(indices(after));
  for (const reading of ["Pain 6 of 10, during", "Pain 1 of 10, after"]) {
    await page.getByText(reading).first().waitFor();
  }

  expect(problems).toEqual([]);
  await context.close();
});

test("that cautions are not known is stated of a session that is over, and the host refuses it of today's", async () => {
  const { page, context } = await application.open({ width: 1024, height: 800, colourScheme: "dark" });
  page.setDefaultTimeout(stepMilliseconds);
  await goTo(page, "Athletes");
  await page.getByRole("heading", { name: /GH-41/ }).waitFor();
  const begin = async (date: string) => {
    await press(page, "Start the next session");
    await page.getByLabel("Date", { exact: true }).fill(date);
    await page.getByLabel(/^They are asked later/).check();
    await press(page, "Begin the session");
    await page.getByText("Not asked yet before the session.").waitFor();
  };
  const state = async (name: string) => {
    await press(page, "State that it is not known");
    await page.getByLabel("Stated by").fill(name);
    expect(await faultsOf(page)).toEqual([]);
    await page.getByLabel("Stated by").press("Enter");
  };

  await begin(daysAgo(10));
  await state("K. L.");
  await page.getByText("Not known, as K. L. states.").first().waitFor();

  // A screen that takes today for yesterday offers it; the machine that keeps the session does not.
  await begin(daysAgo(0));
  expect(await page.getByRole("button", { name: "State that it is not known" }).count()).toBe(0);
  await page.clock.setFixedTime(new Date(Date.now() + 86_400_000));
  await goTo(page, "Recordings");
  await page.getByRole("heading", { name: "Cautions and readings" }).waitFor();
  await state("K. L.");
  await page.getByText("Of today's session nobody can state that the cautions are not known").waitFor();
  await press(page, "Cancel");
  await page.getByText("Not asked yet before the session.").waitFor();
  await context.close();
});

test("the next start asks about the day after the last session, and the sheet prints the answer", async () => {
  const { page, context } = await application.open({ width: 1024, height: 800 });
  page.setDefaultTimeout(stepMilliseconds);
  await page.clock.setFixedTime(new Date(Date.now() + 86_400_000));
  await goTo(page, "Athletes");
  await page.getByRole("heading", { name: /GH-41/ }).waitFor();
  await press(page, "Start the next session");
  await page.getByLabel(/^They are asked later/).check();
  await press(page, "Begin the session");
  await page.getByText("Not answered yet: The day after the session").waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await page.getByLabel(/What became of the knee/).fill("a little stiff until noon");
  await press(page, "Begin the session");
  await page.getByText("Not asked yet before the session.").waitFor();
  await goTo(page, "Sheet");
  await page
    .getByText(/Asked about the day after the session before: .*a little stiff until noon/)
    .first()
    .waitFor();
  await context.close();
});
