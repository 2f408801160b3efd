import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { faultsOf } from "./screen-faults.ts";

let application: LaunchedApplication;
beforeAll(async () => {
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
});

async function openAthlete(page: Page): Promise<void> {
  await page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: "Athletes" }).click();
  await page.getByRole("heading", { name: /Maren Tveitlund/, level: 2 }).waitFor();
}

test("two windows on one athlete: each keeps its own fields, the same field is asked about, undo asks before a record", async () => {
  const one = await application.open();
  const two = await application.open({ colourScheme: "dark" });
  for (const { page } of [one, two]) {
    await openAthlete(page);
    await page.getByRole("button", { name: "Change", exact: true }).click();
    await page.getByRole("heading", { name: "Change the athlete" }).waitFor();
  }
  await one.page.getByLabel("Sport").fill("handball, goalkeeper");
  await one.page.getByLabel("Level").fill("second league");
  await one.page.getByRole("button", { name: "Keep", exact: true }).click();
  await one.page.getByRole("heading", { name: "Change the athlete" }).waitFor({ state: "detached" });

  // The second form began before that: its own field and the one both changed.
  await two.page.getByLabel("Note").fill("prefers mornings");
  await two.page.getByLabel("Sport").fill("football");
  await two.page.getByRole("button", { name: "Keep", exact: true }).click();
  const dialog = two.page.getByRole("dialog", { name: "Changed elsewhere in the meantime" });
  await dialog.getByText("Leave it as it is now: handball, goalkeeper").waitFor();
  expect(await faultsOf(two.page)).toEqual([]);
  // Nothing is chosen beforehand, and keys behind the question do nothing.
  await dialog.getByRole("button", { name: "Go on with these" }).click();
  await dialog.getByText("Choose one for each.").waitFor();
  await dialog.getByLabel("Change it to yours: football").check();
  await dialog.getByRole("button", { name: "Go on with these" }).click();
  await two.page.getByRole("heading", { name: "Change the athlete" }).waitFor({ state: "detached" });
  await two.page.getByRole("button", { name: "Change", exact: true }).click();
  const kept = await Promise.all(["Sport", "Level", "Note"].map((label) => two.page.getByLabel(label).inputValue()));
  expect(kept).toEqual(["football", "second league", "prefers mornings"]);
  await two.page.getByRole("button", { name: "Cancel" }).click();

  // Undo asks, because the record belongs to every session of the athlete.
  await two.page.keyboard.press("Control+z");
  const question = two.page.getByRole("dialog", { name: "Take back what reaches beyond this session?" });
  await question.getByText(/It changes the record of athlete/).waitFor();
  expect(await faultsOf(two.page)).toEqual([]);
  await question.getByRole("button", { name: "Leave everything as it is" }).click();
  await question.waitFor({ state: "detached" });
  await two.page.getByRole("button", { name: "Undo" }).click();
  await question.getByRole("button", { name: "Take back “Change athlete”" }).click();
  await two.page.getByText("Taken back: Change athlete.").waitFor();

  // The first window's own step is the newest again, and is taken back from there.
  await one.page.getByRole("button", { name: "Undo" }).click();
  const own = one.page.getByRole("dialog", { name: "Take back what reaches beyond this session?" });
  await own.getByRole("button", { name: "Take back “Change athlete”" }).click();
  await one.page.getByText("Taken back: Change athlete.").waitFor();
  expect([...one.problems, ...two.problems]).toEqual([]);
  await one.context.close();
  await two.context.close();
});
