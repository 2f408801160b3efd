import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { formatValue } from "../../core/ground/format-number.ts";
import type { ResultDocument } from "../../core/sheet/result-document.ts";
import { writeBatterySession } from "./battery-session.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { runCommand } from "./run-command.ts";

let application: LaunchedApplication;
let parent: string;
beforeAll(async () => {
  application = await launchApplication();
  parent = mkdtempSync(join(tmpdir(), "counterpoise-battery-"));
  writeBatterySession(parent, "battery");
});
afterAll(async () => {
  await application?.close();
  rmSync(parent, { recursive: true, force: true });
});

const goTo = (page: Page, area: string) =>
  page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();

async function openTrial(page: Page, file: string): Promise<void> {
  await page.locator(`[data-trial^="${file}"]`).click();
  await page.getByText(`· ${file}`).waitFor();
}

/** What the command line makes of the session with every decision taken so far. */
async function analyzeOnCommandLine(page: Page): Promise<ResultDocument> {
  await goTo(page, "Sheet");
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: "session.json with all decisions" }).click();
  const saved = await (await waiting).path();
  writeFileSync(join(parent, "battery/session.json"), readFileSync(saved));
  const { stdout } = runCommand(parent, ["analyze", "battery", "--format", "json"]);
  return JSON.parse(stdout);
}

test("a moved contact of a hop, an accepted test and a stated box reach the numbers of the command line", async () => {
  const { page, context, problems } = await application.open();
  await goTo(page, "Recordings");
  await page.locator("input[webkitdirectory]").setInputFiles(join(parent, "battery"));
  await page.getByRole("heading", { name: "battery", exact: true }).waitFor();
  await goTo(page, "Traces");

  // The third contact of the hops ends four milliseconds later.
  await openTrial(page, "hops-both.csv");
  const contact = page.getByRole("row").filter({ has: page.getByRole("rowheader", { name: "3", exact: true }) });
  const contactTime = contact.getByRole("cell").nth(2).locator(".quantity").first();
  const before = await contactTime.textContent();
  const field = page.getByLabel("Time of take-off 3 in seconds");
  await field.focus();
  for (let step = 0; step < 4; step += 1) await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Reset take-off 3 to detected" }).waitFor();
  const after = await contactTime.textContent();
  expect(after).not.toBe(before);

  // What is called a drop jump looks like a countermovement jump, and is taken as one.
  await openTrial(page, "said-to-be-a-drop.csv");
  await page.getByRole("button", { name: "Take it as a countermovement jump" }).click();
  await page.getByRole("heading", { name: "Countermovement jump, two legs, 1" }).waitFor();

  // Another box for the two-leg drop jump.
  await openTrial(page, "drop-both.csv");
  await page.getByRole("button", { name: "change" }).click();
  await page.getByLabel("Height of the box, m").fill("30");
  await page.keyboard.press("Enter");
  await page.getByText("a number of metres").waitFor();
  await page.getByLabel("Height of the box, m").fill("0,45");
  await page.getByLabel("Leg that led off it").selectOption("right");
  await page.getByRole("button", { name: "State it" }).click();
  await page.getByText("Box 0.45").waitFor();

  // What was stated of a landing is taken back, for both questions at once, and again by Undo and Redo.
  await openTrial(page, "landing-both.csv");
  await page.getByRole("button", { name: "change" }).click();
  await page.getByLabel("Height of the box, m").fill("");
  await page.getByLabel("Leg that led off it").selectOption("not stated");
  await page.getByRole("button", { name: "State it" }).click();
  const unstated = page.getByText("Height of the box not stated · leading leg not stated");
  await unstated.waitFor();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await unstated.waitFor({ state: "detached" });
  await page.getByRole("button", { name: /^Redo/ }).click();
  await unstated.waitFor();

  // Every test can be laid over, hops by their contacts.
  await goTo(page, "Sides");
  await page.getByLabel("Test drawn").selectOption({ label: "Repeated hops, single-leg" });
  await page.getByText("right, involved, 5 hops").waitFor();

  const result = await analyzeOnCommandLine(page);
  const trialOf = (file: string) => result.trials.find((trial) => trial.file.endsWith(file));
  const hop = trialOf("hops-both.csv")?.hops?.find((each) => each.contactIndex === 3);
  expect(after).toBe(formatValue(hop?.contactTime, undefined, "s").value);
  expect(trialOf("said-to-be-a-drop.csv")).toMatchObject({ test: "countermovementJump", status: "analysed" });
  expect(trialOf("drop-both.csv")).toMatchObject({ dropHeightMetres: 0.45, leadingLeg: "right" });
  expect(trialOf("landing-both.csv")).toMatchObject({ test: "dropLanding", status: "analysed" });
  expect(trialOf("landing-both.csv")).not.toHaveProperty("dropHeightMetres");
  expect(trialOf("landing-both.csv")).not.toHaveProperty("leadingLeg");
  expect(problems).toEqual([]);
  await context.close();
});

test("left and right are turned round in chosen recordings in one step, and Undo takes it back", async () => {
  const { page, context } = await application.open();
  await goTo(page, "Recordings");
  await page.getByRole("button", { name: "Open the simulated demo world" }).click();
  const choice = page.getByLabel("Session shown");
  await choice.waitFor();
  await choice.selectOption(await choice.locator("option", { hasText: "month 5.5" }).getAttribute("value"));
  await goTo(page, "Sides");
  const doubt = page.getByText("feet contradicted");
  await doubt.first().waitFor();
  const row = page.locator('[data-row="countermovement-jump-braking-impulse-symmetry"]');
  const braking = row.locator("strong").first();
  expect(await braking.textContent()).toBe("–");
  const values = await row.locator("td .quantity").allTextContents();
  const [plate1 = Number.NaN, plate2 = Number.NaN] = values.map(Number.parseFloat);
  await page.getByRole("columnheader", { name: "plate 1" }).first().waitFor();

  await page.getByRole("button", { name: "Turn left and right round…" }).click();
  await page.getByRole("button", { name: "Turn left and right round in 12 recordings" }).click();
  await doubt.first().waitFor({ state: "detached" });
  const turned = Number.parseFloat((await braking.textContent()) ?? "");
  // She faced the other way: the involved right foot stood on plate 1, the left one on plate 2. Shown to the per cent.
  expect(Math.abs(turned - (100 * plate1) / plate2)).toBeLessThan(1);

  await page.getByRole("button", { name: /^Undo/ }).click();
  await doubt.first().waitFor();
  await context.close();
});
