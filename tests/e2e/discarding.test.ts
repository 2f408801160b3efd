import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { projectRoot } from "../architecture/imports.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";

let application: LaunchedApplication;
beforeAll(async () => {
  application = await launchApplication();
});
afterAll(async () => {
  await application?.close();
});

const goTo = (page: Page, area: string) =>
  page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();

/** Waits for the focus to stand on the button with these words. */
async function focusOn(page: Page, words: string): Promise<void> {
  await expect.poll(() => page.locator("button:focus").textContent()).toBe(words);
}

/** Moves take-off by one step of the keyboard and sends it. */
async function moveTakeoff(page: Page, key: "ArrowLeft" | "ArrowRight"): Promise<void> {
  await page.getByRole("slider", { name: "take-off" }).focus();
  await page.keyboard.press(key);
  await page.keyboard.press("Enter");
}

test("a decision another page has overtaken is asked about, and left alone the page shows what holds now", async () => {
  const first = await application.open();
  const second = await application.open();
  for (const { page } of [first, second]) {
    await goTo(page, "Traces");
    await page.getByRole("slider", { name: "take-off" }).waitFor();
  }
  await moveTakeoff(first.page, "ArrowRight");
  await first.page.getByRole("button", { name: "Reset take-off to detected" }).waitFor();
  await moveTakeoff(second.page, "ArrowLeft");
  const question = second.page.getByRole("dialog", { name: "Changed elsewhere in the meantime" });
  await question.getByText(/^Change it to yours: moved to/).waitFor();
  await question.getByRole("button", { name: "Change nothing" }).click();
  await second.page.getByRole("button", { name: "Reset take-off to detected" }).waitFor();
  const time = (page: Page) => page.getByLabel("Time of take-off in seconds").inputValue();
  expect(await time(second.page)).toBe(await time(first.page));
  await first.page.getByRole("button", { name: /^Undo/ }).click();
  await first.page.getByRole("button", { name: "Reset take-off to detected" }).waitFor({ state: "detached" });
  await first.context.close();
  await second.context.close();
});

test("the form to exclude says what it misses, and Escape leaves the trial as it was", async () => {
  const { page, context } = await application.open();
  await goTo(page, "Traces");
  await page.getByRole("button", { name: "Exclude…" }).click();
  await page.keyboard.press("Enter");
  await page.getByText("The reason is missing").waitFor();
  await page.keyboard.press("Escape");
  await page.getByLabel("Why it does not count").waitFor({ state: "detached" });
  await focusOn(page, "Exclude…");
  await context.close();
});

test("sessions with decisions that are not saved close only when that was asked", async () => {
  const { page, context } = await application.open();
  // The demo world is there to be played with; what a person brings in is not.
  await goTo(page, "Recordings");
  await page
    .locator("input[webkitdirectory]")
    .setInputFiles(join(projectRoot, "sample-traces/maren-tveitlund/2-month-4"));
  await page.getByRole("heading", { name: "2-month-4", exact: true }).waitFor();
  await goTo(page, "Traces");
  await page.locator(".plot[data-drawn]").waitFor();
  await page.getByRole("button", { name: "Mark as seen" }).click();
  await page.getByText("1 seen").waitFor();

  await goTo(page, "Recordings");
  const close = page.getByRole("button", { name: "Close all sessions" });
  await close.click();
  await page.getByRole("dialog", { name: "Close all sessions?" }).waitFor();
  await focusOn(page, "Keep the sessions open");
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await focusOn(page, "Close all sessions");

  // Leaving the page asks too, in the browser's own words.
  let asked = "";
  page.once("dialog", (dialog) => {
    asked = dialog.type();
    void dialog.dismiss();
  });
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => asked).toBe("beforeunload");

  await close.click();
  await page.getByRole("button", { name: "Discard the decisions" }).click();
  await page.getByText("No session is open").waitFor();
  await context.close();
});
