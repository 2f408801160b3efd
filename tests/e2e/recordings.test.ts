import { mkdirSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { jumpText } from "../electron/simulated-recordings.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { faultsOf } from "./screen-faults.ts";

let application: LaunchedApplication;
let parent: string;

/** Jumps whose file says neither which plate is which nor the unit. */
const nameless = (seed: number) => jumpText("both", seed).replace("time (s),left (N),right (N)", "t,one,two");

beforeAll(async () => {
  parent = mkdtempSync(join(tmpdir(), "counterpoise-recordings-"));
  const write = (folder: string, files: Readonly<Record<string, string>>) => {
    mkdirSync(join(parent, folder), { recursive: true });
    for (const [name, text] of Object.entries(files)) writeFileSync(join(parent, folder, name), text);
  };
  write("one/month-7", {
    "rec-1.csv": `Athlete,GH-07\n${jumpText("both", 801)}`,
    "rec-2.csv": jumpText("left", 803, 0.12),
    "rec-3.csv": nameless(805),
    "rec-4.csv": nameless(807),
    "notes.csv": "time (s);left (N)\n",
  });
  write("two/month-7", { "rec-1.csv": jumpText("both", 809) });
  write("three/day", {
    "rec-1.csv": jumpText("both", 811),
    "rec-2.csv": jumpText("both", 813),
    "names-only.csv": "time (s);left (N)\n",
    "to-do.txt": "call the surgeon\n",
    "picture.svg": "<svg xmlns='http://www.w3.org/2000/svg'></svg>",
  });
  writeFileSync(join(parent, "three/day/large.csv"), "");
  truncateSync(join(parent, "three/day/large.csv"), 65 * 1024 * 1024);
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
  rmSync(parent, { recursive: true, force: true });
});

const goToRecordings = (page: Page) =>
  page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Recordings" }).click();
const row = (page: Page, file: string) => page.getByRole("row", { name: new RegExp(`^${file}`) });
const cellsOf = (page: Page, file: string) => row(page, file).getByRole("gridcell").allTextContents();

test("what a batch asks is answered once, remembered for its shape, and its trials are assigned by keyboard", async () => {
  const { page, context, problems } = await application.open({ width: 1440, height: 900 });
  await goToRecordings(page);
  await page.locator("input[webkitdirectory]").setInputFiles(join(parent, "one/month-7"));
  await page.getByText("5 recordings: 4 ask for something, 1 refused.").waitFor();
  await page.getByText("Offered by the files: athlete GH-07 (header, line 1).").waitFor();
  expect(await faultsOf(page)).toEqual([]);

  // The file stands as text beside the force, which appears once it is known what the columns are.
  await row(page, "rec-3.csv").click();
  await page.getByText("Nothing in this file was understood as force yet.").waitFor();
  await page.getByLabel("Column 2, one, is").selectOption("left");
  await page.getByLabel(/^Unit of force/).selectOption("N");
  await page.getByText("two: right").waitFor();
  await page.getByRole("region", { name: "The file as text" }).evaluate((box) => box.scrollTo(0, 19 * 5000));
  await page.getByRole("cell", { name: "5001", exact: true }).waitFor();
  expect(await faultsOf(page)).toEqual([]);

  // Remembered, it answers for the other file of this shape and for no other.
  await page.getByLabel("Remember these answers").fill("hall");
  await page.getByRole("button", { name: "Remember" }).click();
  await row(page, "rec-4.csv").click();
  await page.getByText("Read with the saved layout “hall”.").waitFor();
  await page.getByRole("button", { name: "Show them" }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export hall" }).click();
  expect(JSON.parse(readFileSync(await (await download).path(), "utf8"))).toMatchObject({
    name: "hall",
    answers: { unit: "N", time: 1, left: 2, right: 3, platesStated: true },
  });
  expect(await faultsOf(page)).toEqual([]);

  // The keyboard chooses rows; what is offered is accepted for all of them in one step.
  await row(page, "rec-1.csv").click();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press("Shift+ArrowDown");
  expect(await page.getByRole("row", { selected: true }).count()).toBe(4);
  await page.getByRole("button", { name: "Accept what is offered for 4" }).click();
  await page.getByText("Last change: Assign 4 trials").waitFor();
  expect((await cellsOf(page, "rec-2.csv"))[0]).toMatch(/^understood/);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await page.getByRole("button", { name: "Accept what is offered for 4" }).waitFor();
  await page.getByRole("button", { name: /^Redo/ }).click();

  // Fill down: the others become what the first one is.
  await row(page, "rec-3.csv").click();
  await page.getByLabel("Test", { exact: true }).selectOption("squatJump");
  await expect.poll(async () => (await cellsOf(page, "rec-3.csv"))[1]).toMatch(/^squat jump/);
  await row(page, "rec-4.csv").click({ modifiers: ["Shift"] });
  await page.keyboard.press("Control+d");
  await expect.poll(async () => (await cellsOf(page, "rec-4.csv"))[1]).toMatch(/^squat jump/);

  // The batch follows, and only what did not come through is tried again.
  await page.getByRole("button", { name: /Try .* again/ }).click();
  await page.getByText("5 recordings: 4 understood, 1 refused.").waitFor();

  // Another athlete's folder of the same name stands beside it, and it is said.
  await page.locator("input[webkitdirectory]").setInputFiles(join(parent, "two/month-7"));
  await page.getByText("this one stands beside it as “month-7 (2)”.").waitFor();
  await page.getByRole("heading", { name: "month-7 (2)", exact: true }).waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await page.getByRole("button", { name: "Close all sessions" }).click();
  await page.getByRole("button", { name: "Discard the decisions" }).click();
  await page.getByText("No session is open").waitFor();
  expect(problems).toEqual([]);
  await context.close();
}, 120_000);

test("a protocol is chosen with the other statements, and the screen says how far the session has come", async () => {
  const { page, context, problems } = await application.open({ width: 1024, height: 768, colourScheme: "dark" });
  await goToRecordings(page);
  await page.locator("input[webkitdirectory]").setInputFiles(join(parent, "two/month-7"));
  await page.getByRole("heading", { name: "month-7", exact: true }).waitFor();
  await page.getByLabel("Protocol", { exact: true }).selectOption("return-to-running");
  await page.getByRole("button", { name: "Keep these statements" }).click();
  await page.getByText("Countermovement jump: 0 of 4.").waitFor();
  await page.getByRole("button", { name: "Accept what is offered" }).click();
  await page.getByText("Countermovement jump: 0 of 4 (1 waits for an answer).").waitFor();
  await page.getByRole("button", { name: /^Left foot on plate/ }).click();
  await page.getByText("Countermovement jump: 1 of 4.").waitFor();
  expect(await faultsOf(page)).toEqual([]);
  expect(problems).toEqual([]);
  await context.close();
});

test.each([
  { width: 1024, height: 768, colourScheme: "dark" },
  { width: 1440, height: 900, colourScheme: "light" },
] as const)(
  "what is no recording or too large is named, and recordings are taken out of the session and back: %o",
  async (screen) => {
    const { page, context, problems } = await application.open(screen);
    await goToRecordings(page);
    await page.locator("input[webkitdirectory]").setInputFiles(join(parent, "three/day"));
    await page
      .getByText("Left aside, as they are no recordings: 1 picture (day/picture.svg) and 1 text (day/to-do.txt).")
      .waitFor();
    await page.getByText("4 recordings: 2 ask for something, 2 refused.").waitFor();
    await page.getByText("large.csv was left out: it is larger than 64 MB").waitFor();
    expect(await faultsOf(page)).toEqual([]);

    // The refused one goes by the button beside what is said of it, with the keyboard.
    await row(page, "names-only.csv").click();
    const detail = page.getByRole("region", { name: "names-only.csv" });
    await detail.getByRole("button", { name: "Take out of the session" }).press("Enter");
    await page.getByText("Last change: Take names-only.csv out of the session").waitFor();
    expect(await row(page, "names-only.csv").count()).toBe(0);

    // Several go by the selection, as one step.
    await row(page, "rec-1.csv").click();
    await page.keyboard.press("Shift+ArrowDown");
    await page.getByRole("button", { name: "Take 2 recordings out of the session" }).click();
    await page.getByText("Last change: Take 2 recordings out of the session").waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await row(page, "rec-2.csv").waitFor();
    expect(await faultsOf(page)).toEqual([]);
    expect(problems).toEqual([]);
    await page.getByRole("button", { name: "Close all sessions" }).click();
    await context.close();
  },
  60_000,
);
