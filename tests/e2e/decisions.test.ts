import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { formatValue } from "../../core/ground/format-number.ts";
import type { ResultDocument } from "../../core/sheet/result-document.ts";
import { projectRoot } from "../architecture/imports.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { runCommand } from "./run-command.ts";

const session = "month-7";
const moved = "countermovement-both-2.csv";
const excluded = "countermovement-both-4.csv";
const reason = "stepped before the dip";

let application: LaunchedApplication;
let parent: string;
beforeAll(async () => {
  application = await launchApplication();
  parent = mkdtempSync(join(tmpdir(), "counterpoise-decisions-"));
  cpSync(join(projectRoot, "sample-traces/maren-tveitlund/4-month-7"), join(parent, session), { recursive: true });
});
afterAll(async () => {
  await application?.close();
  rmSync(parent, { recursive: true, force: true });
});

function analyzeOnCommandLine(): ResultDocument {
  const { stdout, status } = runCommand(parent, ["analyze", session, "--format", "json"]);
  expect(status).toBe(0);
  return JSON.parse(stdout);
}

/** What the command line says of one measure, written as the screens write it. */
function shownByCommandLine(result: ResultDocument, file: string, id: string): string {
  const trial = result.trials.find((each) => each.file.endsWith(file));
  const measure = trial?.measures.find((each) => each.id === id && each.side === "both");
  if (measure === undefined) throw new Error(`The command line has no ${id} of ${file}.`);
  const { value, uncertainty } = formatValue(measure.value, measure.uncertainty, measure.unit);
  return `${value} ± ${uncertainty}`;
}

/** A measure of both legs as the table beside the trace shows it. */
async function shownBesideTrace(page: Page, id: string): Promise<string> {
  const cell = await page.locator(`[data-measure="${id}"] [data-side="both"]`).textContent();
  return (cell ?? "").replace(/\s+/g, " ").trim();
}

async function openTrial(page: Page, file: string): Promise<void> {
  await page.locator(`[data-trial^="${file}"]`).click();
  await page.getByText(`· ${file}`).waitFor();
}

async function download(page: Page, button: string): Promise<string> {
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: button, exact: true }).click();
  return readFileSync(await (await waiting).path(), "utf8");
}

test("moving an event and excluding a trial gives the numbers that the command line gives", async () => {
  const { page, context, problems } = await application.open();
  const goTo = (area: string) =>
    page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();

  // Bring the folder in: every file is understood.
  await goTo("Recordings");
  await page.locator("input[webkitdirectory]").setInputFiles(join(parent, session));
  await page.getByRole("heading", { name: session, exact: true }).waitFor();
  await page.getByText("24 recordings", { exact: true }).waitFor();
  expect(await page.getByRole("gridcell", { name: "understood" }).count()).toBe(24);

  // Untouched, the screen agrees with the command line.
  await goTo("Traces");
  await openTrial(page, moved);
  const before = analyzeOnCommandLine();
  const heightBefore = await shownBesideTrace(page, "jumpHeightImpulse");
  expect(heightBefore).toBe(shownByCommandLine(before, moved, "jumpHeightImpulse"));

  // Take-off five milliseconds later, by keyboard.
  const takeoff = page.getByRole("slider", { name: "take-off" });
  await takeoff.focus();
  for (let step = 0; step < 5; step += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Reset take-off to detected" }).waitFor();
  const heightAfter = await shownBesideTrace(page, "jumpHeightImpulse");
  const flightAfter = await shownBesideTrace(page, "flightTime");
  expect(heightAfter).not.toBe(heightBefore);

  // Another trial excluded with a reason; the program says whether that changes a status.
  await openTrial(page, excluded);
  await page.getByRole("button", { name: "Exclude…" }).click();
  await page.getByLabel("Why it does not count").fill(reason);
  await page.getByRole("button", { name: "Exclude", exact: true }).click();
  await page.getByText(/It changes (no|a) status/).waitFor();

  // The decisions, taken along as session.json, give the command line the same numbers.
  await goTo("Sheet");
  await page.getByRole("heading", { name: /Testing sheet/ }).waitFor();
  writeFileSync(join(parent, session, "session.json"), await download(page, "session.json with all decisions"));
  const after = analyzeOnCommandLine();
  expect(heightAfter).toBe(shownByCommandLine(after, moved, "jumpHeightImpulse"));
  expect(flightAfter).toBe(shownByCommandLine(after, moved, "flightTime"));
  expect(after.trials.find((each) => each.file.endsWith(excluded))?.excluded).toEqual({ reason });
  const braking = after.comparisons.find(
    (each) => each.test === "countermovementJump" && each.measure === "brakingImpulse",
  );
  expect(braking?.involved?.trials).toBe(3);

  // Every byte of the exports agrees.
  const csv = runCommand(parent, ["analyze", ".", "--format", "csv"]).stdout;
  expect(await download(page, "CSV, every measure")).toBe(csv);
  const json = runCommand(parent, ["analyze", ".", "--format", "json"]).stdout;
  expect(await download(page, "JSON, the whole result")).toBe(json);

  // Undo takes both steps back, the numbers with them.
  await goTo("Traces");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await openTrial(page, moved);
  await page.getByRole("slider", { name: "take-off" }).waitFor();
  expect(await shownBesideTrace(page, "jumpHeightImpulse")).toBe(heightBefore);
  expect(problems).toEqual([]);
  await context.close();
});
