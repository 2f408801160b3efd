import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectRoot } from "../architecture/imports.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { faultsOf } from "./screen-faults.ts";

let application: LaunchedApplication;
let root: string;
beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "counterpoise-watch-"));
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
  rmSync(root, { recursive: true, force: true });
});

const recordings = join(projectRoot, "sample-traces/maren-tveitlund/4-month-7");

describe.each([
  ["light", 1440],
  ["dark", 1024],
] as const)("watching a folder in %s at %i", (colourScheme, width) => {
  test("the screen says of each jump whether it counts and what is missing, and axe finds nothing", async () => {
    const folder = join(root, colourScheme, "today");
    mkdirSync(folder, { recursive: true });
    const { page, context, problems } = await application.open({ width, height: 900, colourScheme });
    await page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Recordings" }).click();
    await page.getByLabel("Folder, with its whole path").fill(`${folder}-not-there`);
    await page.getByRole("button", { name: "Start watching" }).click();
    await page.getByText("There is no folder").waitFor();
    await page.getByRole("button", { name: "Dismiss" }).click();
    await page.getByLabel("Folder, with its whole path").fill(folder);
    await page.getByRole("button", { name: "Start watching" }).click();
    await page.getByText("Waiting for the first recording.").waitFor();
    expect(await faultsOf(page)).toEqual([]);

    copyFileSync(join(recordings, "countermovement-both-1.csv"), join(folder, "rec-1.csv"));
    await page.getByText("Asks", { exact: true }).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Take it as a countermovement jump" }).first().click();
    // Nothing yet proves which foot stood on which plate: it does not count before that is answered, with one click.
    await page
      .getByText("Which foot stood on which plate is not proved in the countermovement jump rec-1.csv")
      .waitFor();
    await page.getByText("Asks", { exact: true }).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: /^Left foot on plate left/ }).click();
    await page.getByText("Counts", { exact: true }).waitFor();
    await page.getByLabel("Protocol of this session").selectOption("return-to-pivoting-sport");
    // Nothing was asked yet: the board says so, and no more; the tester's form asks.
    await page.getByText("The cautions are to be asked before the next jump. This one is kept.").waitFor();
    await page.getByRole("button", { name: "Ask before the session" }).click();
    await page.getByLabel("Pain now in the involved knee").fill("2.5");
    await page.getByLabel("Effusion now").selectOption("trace");
    for (const question of await page.getByRole("radiogroup", { name: /\?$/ }).all()) {
      await question.getByRole("radio", { name: "no" }).check();
    }
    await page
      .getByRole("radiogroup", { name: /practised landing/ })
      .getByRole("radio", { name: "yes" })
      .check();
    await page.getByLabel("Answered by").fill("K. L.");
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Keep the answers" }).click();
    await page.getByText("3 more of the same: 1 of 4, 5 attempts left.").waitFor();
    for (const place of ["main", ".notices"]) {
      expect(await page.locator(place).textContent()).not.toMatch(/\bpain\b|effusion|answered before/i);
    }

    await page.getByLabel("The next recordings are").selectOption("countermovementJump");
    await page.getByLabel("with", { exact: true }).selectOption("left");
    await page.getByRole("button", { name: "State it for what comes next" }).click();
    copyFileSync(join(recordings, "countermovement-left-1.csv"), join(folder, "rec-2.csv"));
    await page.getByText("Single-leg countermovement jump, left", { exact: true }).waitFor();
    await page.getByText("Single-leg countermovement jump: right 0 of 4, left 1 of 4.").waitFor();
    expect(await faultsOf(page)).toEqual([]);

    await page.getByLabel("as practice: landings, no attempts").check();
    await page.getByRole("button", { name: "State it for what comes next" }).click();
    copyFileSync(join(recordings, "countermovement-left-2.csv"), join(folder, "rec-3.csv"));
    await page.getByText("Practice", { exact: true }).waitFor();
    await page.getByText("Single-leg countermovement jump: right 0 of 4, left 1 of 4 (1 practice jump).").waitFor();

    await page.getByRole("button", { name: "Stop watching" }).click();
    await page.getByRole("button", { name: "Start watching" }).waitFor();
    expect(problems.filter((line) => !line.includes("409"))).toEqual([]);
    await context.close();
  });
});
